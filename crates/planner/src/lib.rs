//! From a shop to needs, verdicts, ladder and chart.
