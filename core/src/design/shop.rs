//! The sheet the parts come from, the saw that cuts them, and what things cost.
use super::choice::Cutting;
use super::field::{inputs, mm};
use crate::quantity::{Length, Money, Rate};

/// The highest price that is taken, in hundredths.
const DEAR: i64 = 100_000_000;

inputs! {
    /// The sheet the parts come from, the saw that cuts them, and what things cost. A price of 0 is one not known.
    shop: Shop {
        /// Length of a sheet of the stock, along the grain of its face.
        sheet_length: Length = mm(1525.0), mm(100.0) => mm(6000.0), "sy", "Sheet length";
        /// Width of a sheet of the stock.
        sheet_width: Length = mm(1525.0), mm(100.0) => mm(6000.0), "sz", "Sheet width";
        /// Width of the saw's cut, or of the router's bit.
        kerf: Length = mm(3.0), mm(0.0) => mm(20.0), "yk", "Saw kerf";
        /// What is cut off all round the sheet before anything else, because its edges are damaged or not square.
        trim: Length = mm(5.0), mm(0.0) => mm(100.0), "yt", "Edge trim";
        /// How the sheet is cut up.
        cutting: Cutting = 0, 0 => 1, "yc", "Cut with";
        /// Whether arms, rails and boards must lie along the grain of the sheet; a panel without grain lets them turn.
        keep_grain: bool = 1, 0 => 1, "yh", "Keep to the grain";
        /// Length of an offcut that is used before a sheet, along its grain; 0 where there is none.
        offcut_length: Length = 0, 0 => mm(6000.0), "ya", "Offcut 1, length";
        /// Width of that offcut.
        offcut_width: Length = 0, 0 => mm(6000.0), "yb", "Offcut 1, width";
        /// Length of a second offcut, along its grain; 0 where there is none.
        second_length: Length = 0, 0 => mm(6000.0), "yd", "Offcut 2, length";
        /// Width of the second offcut.
        second_width: Length = 0, 0 => mm(6000.0), "ye", "Offcut 2, width";
        /// How far from its mark a hole of a pivot may come to lie the way you drill, in any direction.
        drilling: Length = mm(0.3), mm(0.02) => mm(3.0), "yf", "Drilling error";
        /// How much higher one end of the deck may stand than the other because of the holes.
        level: Length = mm(5.0), mm(0.1) => mm(50.0), "yg", "Out of level, accepted";
        /// Price of a sheet.
        sheet_price: Money = 0, 0 => DEAR, "zs", "Price, sheet";
        /// Price of bar and tube by their length, all kinds alike, as whole bars are sold; battens count among the small parts.
        bar_price: Rate = 0, 0 => DEAR, "zb", "Price, bar and tube";
        /// Price of the screw with its nut.
        screw_price: Money = 0, 0 => DEAR, "zt", "Price, screw and nut";
        /// Price of a wheel bearing; the thrust bearing is taken as two of them.
        bearing_price: Money = 0, 0 => DEAR, "zw", "Price, bearing";
        /// Price of a caster.
        caster_price: Money = 0, 0 => DEAR, "zc", "Price, caster";
        /// Price of a pivot bolt with nut, washers and spacer.
        bolt_price: Money = 0, 0 => DEAR, "zp", "Price, pivot bolt";
        /// Price of everything small together: wood screws, small bolts, battens, glue.
        small_price: Money = 0, 0 => DEAR, "zf", "Price, small parts";
    }
}
