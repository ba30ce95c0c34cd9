"""The facts of the pages as plain text: for the terminal and for the video's description box."""
