"""What happened to the build, episode by episode, and what it cost; pure."""
