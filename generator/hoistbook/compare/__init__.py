"""What needs figures of more than one state: claims, and estimates against measurements."""
