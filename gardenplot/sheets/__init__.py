"""Paper: pages at true scale; reportlab is used only here."""
