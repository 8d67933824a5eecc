//! The sheet the parts come from.
use super::field::{inputs, mm};
use crate::quantity::Length;

inputs! {
    /// The sheet the parts come from.
    shop: Shop {
        /// Length of a sheet of the stock.
        sheet_length: Length = mm(1525.0), mm(100.0) => mm(6000.0), "sy", "Sheet length";
        /// Width of a sheet of the stock.
        sheet_width: Length = mm(1525.0), mm(100.0) => mm(6000.0), "sz", "Sheet width";
    }
}
