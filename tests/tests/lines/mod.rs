//! Reference tables as text: the first lines say where they come from.

#![allow(dead_code, reason = "no single test uses all of it")]
#![allow(clippy::expect_used, clippy::panic, reason = "a ragged table stops a test")]

/// A reference table: column names, and rows of cells.
pub struct Table {
    columns: Vec<&'static str>,
    rows: Vec<Vec<&'static str>>,
}

impl Table {
    pub fn new(text: &'static str) -> Self {
        let mut lines =
            text.lines().filter(|line| !line.starts_with('#')).map(|line| line.split(';').collect());
        let columns: Vec<&str> = lines.next().expect("a line of column names");
        let rows: Vec<Vec<&str>> = lines.collect();
        assert!(!rows.is_empty() && rows.iter().all(|row| row.len() == columns.len()), "a ragged table");
        Self { columns, rows }
    }

    pub fn rows(&self) -> impl ExactSizeIterator<Item = Line<'_>> {
        self.rows.iter().map(|cells| Line { columns: &self.columns, cells })
    }
}

/// One row of a reference table.
pub struct Line<'a> {
    columns: &'a [&'static str],
    cells: &'a [&'static str],
}

impl Line<'_> {
    pub fn text(&self, column: &str) -> &'static str {
        let place = self.columns.iter().position(|name| *name == column);
        self.cells[place.unwrap_or_else(|| panic!("no column {column}"))]
    }

    pub fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or_else(|_| panic!("{column} is no number"))
    }

    pub fn maybe(&self, column: &str) -> Option<f64> {
        self.text(column).parse().ok()
    }
}

macro_rules! table {
    ($name:literal) => {
        $crate::lines::Table::new(include_str!(concat!("../reference/", $name, ".csv")))
    };
}
pub(crate) use table;
