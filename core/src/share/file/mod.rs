//! A design, or a shelf of designs, as a file of JSON (RFC 8259) that a person can read and other programs can write.
//!
//! A design:
//!
//! ```json
//! {
//!   "format": "risewright design",
//!   "version": 1,
//!   "name": "Paper-stack lift",
//!   "inputs": {
//!     "st": { "value": 2, "of": "Stages" },
//!     "al": { "value": 520, "unit": "mm", "of": "Arm, pin to pin" },
//!     "bw": { "value": true, "of": "Bars at the wheels" }
//!   }
//! }
//! ```
//!
//! `format` and `version` say whose file it is. `inputs` holds every input under the two letters it has in links too, for ever
//! ([`crate::design::Field::key`]). Of an input only `value` is needed: a number in the unit that stands beside it (mm, kg, N, MPa, kg/m³, N/mm, °, /m or
//! none), `true` or `false` for a switch, the number of a choice; or a text as people write it, like `"20 1/2 in"`. `unit`, where it is given, must be
//! that of the input; `of` and `choice` are there for the reader and pass unread. A decimal of a unit holds a step exactly (a step of 1/1600 mm is 0.000625 mm), so
//! that a file gives its design back to the digit, as far as [`crate::quantity::MOST_STEPS`] steps. An input that is missing has its value in the metric demo, as in a link: so a file that was written before there was
//! such an input opens for ever. The letters are the names because they never change, while words and even meanings of words do; the words stand beside
//! them for whoever reads. Values outside their ranges are read; what the design means is judged by [`crate::report::analyse`]. A choice that does not exist is refused,
//! since no other would mean the same.
//!
//! A shelf is `{"format": "risewright shelf", "version": 1, "designs": [...]}` with the same `name` and `inputs` in each.
//!
//! Members of a design that this version does not know, be it beside its name, among its inputs or within one, are kept, up to [`KEPT_LIMIT`] and [`KEPT_DEEPEST`], and
//! written again: a file of a later version with the same version number loses nothing by passing through this one. Those of a shelf itself are let go. A higher version number means that something has another meaning; such a file is refused with a
//! sentence that says so. [`schema`] gives all of this as a JSON Schema (draft 2020-12).
//!
//! ```
//! use risewright::design::Demo;
//! use risewright::share::file::{Found, Kept, read, write};
//!
//! for demo in Demo::ALL {
//!     let design = demo.design();
//!     let text = write(&design, &Kept::default());
//!     assert!(text.starts_with("{\n  \"format\": \"risewright design\",\n  \"version\": 1,\n"));
//!     match read(&text) {
//!         Ok(Found::Design(opened)) => assert_eq!(opened.design, design),
//!         other => panic!("{other:?}"),
//!     }
//! }
//! // What another program wrote by hand.
//! let short = r#"{"format": "risewright design", "version": 1, "name": "Bench", "inputs": {"al": {"value": "20 1/2 in"}}}"#;
//! assert!(matches!(read(short), Ok(Found::Design(opened)) if opened.design.name == "Bench"));
//! // What is not ours is refused in words.
//! assert!(read("{}").is_err_and(|fault| fault.to_string().contains("not a file of this program")));
//! ```
mod fault;
mod kept;
mod member;
mod read;
mod schema;
mod strict;
mod write;

pub use fault::FileFault;
pub use kept::{KEPT_DEEPEST, KEPT_LIMIT, Kept};
pub use read::{Found, Opened, read};
pub use schema::schema;
pub use write::{write, write_shelf};

/// The version that is written.
pub const VERSION: u64 = 1;

/// Every version that is read.
pub const VERSIONS: [u64; 1] = [VERSION];

/// The longest text that is looked at, bytes: a shelf of [`MOST_DESIGNS`] designs with the most that is kept of each.
pub const READ_LIMIT: usize = 10_000_000;

/// The most designs of a shelf that are read.
pub const MOST_DESIGNS: usize = 500;

/// How deep members may lie within one another.
pub const DEEPEST: usize = 16;

const DESIGN: &str = "risewright design";
const SHELF: &str = "risewright shelf";
