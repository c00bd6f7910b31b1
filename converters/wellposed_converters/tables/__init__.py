"""Documents as a long table, a clause or a single fact a row, in separated values or a workbook, and back."""
