"""All Qt, and only here: the window shows plans and passes edits on, and computes nothing about gardens."""
