"""All reading: from the files of a journal to frozen records that know their place."""
