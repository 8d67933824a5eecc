//! What to buy: every part that is not cut from sheet, with the words a shop understands, its weight and, where known, its price; and glue.
//!
//! Rows come from the one list of parts, so that nothing is bought that is not drawn and weighed.
use crate::catalogue::bearing::BEARINGS;
use crate::design::{self, Design};
use crate::parts::{BoltSize, Form, Part};
use crate::quantity::{Kind, Length, Mass, Money, Style, System, print};

/// Glue on one face of a joint, kg/m2: 150 to 200 g for white wood glue (common practice, no source).
const GLUE: f64 = 0.18;

/// Thickness of epoxy around a bushing, m, and its density, kg/m3 (common practice, no source).
const EPOXY_FILM: f64 = 0.2e-3;
const EPOXY_DENSITY: f64 = 1150.0;

/// A thrust bearing costs about as much as so many wheel bearings (common practice, no source).
const THRUST_PRICE: i64 = 2;

/// One kind of thing to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its number in every list; none for what is no part: sheets and glue.
    pub number: Option<u32>,
    /// Its name.
    pub name: &'static str,
    /// How many; of what is sold by weight, one.
    pub count: u32,
    /// What it is made from or sold as; none for sheets and glue.
    pub form: Option<Form>,
    /// Three sizes: see [`Form`].
    pub size: [Length; 3],
    /// Mass of all of them.
    pub mass: Mass,
    /// Price of all of them; none where it is not known, or counted with another row.
    pub price: Option<Money>,
    /// Name of a standard it follows, or its class; empty where there is none.
    pub standard: &'static str,
}

/// Everything to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Bill {
    /// Sheets first, then parts by number, then glue.
    pub items: Vec<Item>,
    /// Mass of everything but the sheets.
    pub mass: Mass,
    /// What the known prices come to.
    pub cost: Money,
    /// Whether a price that is not known would add to it.
    pub is_open: bool,
}

/// What to buy for a design, from its parts and the number of sheets its layout takes.
#[must_use]
pub fn bill(design: &Design, parts: &[Part], sheets: usize) -> Bill {
    let sheet_count = u32::try_from(sheets).unwrap_or(u32::MAX);
    let mut items = vec![sheet(design, sheet_count)];
    for part in parts.iter().filter(|part| part.form != Form::Sheet) {
        let mass = Mass::kg(part.total());
        if let Some(known) = items.iter_mut().find(|item| item.number == Some(part.number)) {
            known.count += part.count;
            known.mass += mass;
        } else {
            items.push(Item {
                number: Some(part.number),
                name: part.name,
                count: part.count,
                form: Some(part.form),
                size: part.size,
                mass,
                price: None,
                standard: standard(design, part),
            });
        }
    }
    items[1..].sort_by_key(|item| item.number);
    for item in &mut items {
        item.price = price(design, item);
    }
    let mass = items[1..].iter().map(|item| item.mass).sum();
    items.extend([glue(parts), epoxy(parts)]);
    let small = design.shop.small_price;
    let cost = items.iter().filter_map(|item| item.price).sum::<Money>() + small;
    let is_open = small == Money::ZERO || items.iter().any(|item| item.price == Some(Money::ZERO));
    Bill { items, mass, cost, is_open }
}

fn sheet(design: &Design, count: u32) -> Item {
    let shop = &design.shop;
    let size = [shop.sheet_length, shop.sheet_width, design.arms.thickness];
    let volume: f64 = size.iter().map(|side| side.to_m()).product();
    Item {
        number: None,
        name: "Sheet",
        count,
        form: None,
        size,
        mass: Mass::kg(f64::from(count) * volume * design.arms.density.to_kg_m3()),
        price: None,
        standard: design::panel(design).map_or("", |panel| panel.name),
    }
}

/// Between the layers of a part, and where boards and frames are let into each other.
fn glue(parts: &[Part]) -> Item {
    let face =
        |part: &Part| part.size[0].to_m() * part.size[1].to_m() * f64::from(part.layers.saturating_sub(1));
    let let_in = |part: &Part| -> f64 {
        part.housings.iter().map(|cut| cut.length.to_m() * cut.width.to_m().max(cut.depth.to_m())).sum()
    };
    let area: f64 = parts
        .iter()
        .filter(|part| part.form == Form::Sheet)
        .map(|part| f64::from(part.count) * (face(part) + let_in(part)))
        .sum();
    bulk("Wood glue", GLUE * area)
}

fn epoxy(parts: &[Part]) -> Item {
    let area: f64 = parts
        .iter()
        .filter(|part| part.form == Form::BronzeTube)
        .map(|part| f64::from(part.count) * core::f64::consts::PI * part.size[1].to_m() * part.size[0].to_m())
        .sum();
    bulk("Epoxy for the bushings", EPOXY_DENSITY * EPOXY_FILM * area)
}

fn bulk(name: &'static str, kilograms: f64) -> Item {
    Item {
        number: None,
        name,
        count: 1,
        form: None,
        size: [Length::ZERO; 3],
        mass: Mass::kg(kilograms),
        price: None,
        standard: "",
    }
}

/// The class, designation or thread a part is asked for by.
fn standard(design: &Design, part: &Part) -> &'static str {
    let size = BoltSize { diameter: part.size[1] };
    match part.form {
        Form::Bolt if part.name == "Pivot bolt" => {
            design::bolt_class(design).map_or_else(|| size.thread().unwrap_or(""), |class| class.name)
        }
        Form::Bearing => BEARINGS
            .iter()
            .find(|row| [row.width, row.outside, row.bore] == part.size)
            .map_or("", |row| row.name),
        Form::ThreadedBar => design::thread(design).map_or("", |thread| thread.name),
        _ => "",
    }
}

/// The price of all of an item: zero where the price of its kind is not entered, none where it is counted elsewhere.
fn price(design: &Design, item: &Item) -> Option<Money> {
    let shop = &design.shop;
    let count = i64::from(item.count);
    let by_length = |a_metre: Money| {
        let metres = item.size[0].to_m() * f64::from(item.count);
        Money::of(a_metre.value() * metres)
    };
    match item.form {
        None if item.name == "Sheet" => Some(shop.sheet_price * count),
        Some(
            Form::FlatBar
            | Form::LightBar
            | Form::RoundBar
            | Form::SquareTube
            | Form::BronzeTube
            | Form::Batten,
        ) => Some(by_length(shop.bar_price)),
        Some(Form::ThreadedBar) => Some(shop.screw_price),
        Some(Form::Bearing) if item.name == "Wheel" => Some(shop.bearing_price * count),
        Some(Form::Bearing) => Some(shop.bearing_price * (THRUST_PRICE * count)),
        Some(Form::Bolt) if item.name == "Pivot bolt" => Some(shop.bolt_price * count),
        Some(Form::Bought) if item.name == "Caster" => Some(shop.caster_price * count),
        _ => None,
    }
}

impl Item {
    /// What to ask for in a shop, in the units of a system; bolts and screws in those they are sold in.
    #[must_use]
    pub fn designation(&self, system: System) -> String {
        let [first, second, third] = self.size;
        let length =
            |value: Length, system: System| print(value.steps(), Kind::Length, system, Style::Short).number;
        let own = if (BoltSize { diameter: second }).is_inch() { System::Inch } else { System::Metric };
        let here = |value: Length| length(value, system);
        let words = match self.form {
            None if first == Length::ZERO => String::new(),
            None => format!("{} × {} × {}", here(first), here(second), here(third)),
            Some(Form::Bolt) => {
                let thread = BoltSize { diameter: second }.thread();
                let name = thread.map_or_else(|| length(second, own), str::to_owned);
                format!("{name} × {}", length(first, own))
            }
            Some(Form::LockNut) => {
                BoltSize { diameter: second }.thread().map_or_else(|| length(second, own), str::to_owned)
            }
            Some(Form::WoodScrew) => format!("{} × {}", length(second, own), length(first, own)),
            Some(Form::Washer) => format!("{} / {} × {}", here(second), here(third), here(first)),
            Some(Form::Bearing | Form::BronzeTube) => {
                format!("{} / {} × {}", here(second), here(third), here(first))
            }
            Some(Form::RoundBar) => format!("round {}, {} long", here(second), here(first)),
            Some(Form::SquareTube) => {
                format!("square {} × {}, {} long", here(second), here(third), here(first))
            }
            Some(Form::FlatBar | Form::LightBar | Form::Batten) => {
                format!("{} × {}, {} long", here(second), here(third), here(first))
            }
            Some(Form::ThreadedBar) => {
                format!("{} outside, {} lead, {} long", here(second), here(third), here(first))
            }
            Some(Form::Bought | Form::Sheet) => {
                format!("{} × {} × {}", here(first), here(second), here(third))
            }
        };
        match (self.standard, words.as_str()) {
            ("", _) => words,
            (standard, "") => standard.to_owned(),
            (standard, words) => format!("{words}, {standard}"),
        }
    }
}

/// Money as the reader writes it, empty where it is not known.
#[must_use]
pub fn price_text(price: Option<Money>) -> String {
    match price {
        Some(money) if money != Money::ZERO => {
            print(money.steps(), Kind::Money, System::Metric, Style::Full).number
        }
        _ => String::new(),
    }
}
