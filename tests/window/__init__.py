"""The window without a screen: document, canvas, panels, dialogs, preview and picture."""
