//! What to buy: sheets, every part that is not cut from sheet, with the words a shop understands, its weight and, where known, its price;
//! and glue.
//!
//! Rows come from the one list of parts, so that nothing is bought that is not drawn and weighed.
use super::sheets::Bar;
use crate::catalogue::bearing::BEARINGS;
use crate::design::{self, Design};
use crate::parts::{BoltSize, Form, Part, Rides, fastenings};
use crate::quantity::{Amount, Kind, Length, Mass, Money, Phrase, Rate, Style, System, figures, print};

/// Glue on one face of a joint, kg/m2: 150 to 200 g for white wood glue (common practice, no source).
const GLUE: f64 = 0.18;

/// Thickness of epoxy around a bushing, m, and its density, kg/m3 (common practice, no source).
const EPOXY_FILM: f64 = 0.2e-3;
const EPOXY_DENSITY: f64 = 1150.0;

/// A thrust bearing costs about as much as so many wheel bearings (common practice, no source).
const THRUST_PRICE: i64 = 2;

/// Where in a shop, and in the list, a thing stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shelf {
    /// Sheets.
    Sheets,
    /// Pivot bolts, bushings, and what goes on a pivot.
    Pivots,
    /// Wheels with their axles, and the rails they run on.
    Wheels,
    /// The screw and what turns or holds it.
    Screw,
    /// Casters, bars and bought pieces of the frames.
    Frames,
    /// Bolts and screws that join the frames.
    Fasteners,
    /// Glue.
    Glue,
}

impl Shelf {
    /// Every shelf, in the order of the list.
    pub const ALL: [Self; 7] =
        [Self::Sheets, Self::Pivots, Self::Wheels, Self::Screw, Self::Frames, Self::Fasteners, Self::Glue];

    /// The heading above its rows.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Sheets => "Sheets",
            Self::Pivots => "Pivots",
            Self::Wheels => "Wheels, axles and their rails",
            Self::Screw => "Screw and crank",
            Self::Frames => "Casters, base and deck",
            Self::Fasteners => "Fasteners",
            Self::Glue => "Glue",
        }
    }
}

/// What a row costs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Price {
    /// All of its pieces together.
    Known(Money),
    /// No price is entered for its kind.
    Open,
    /// It is paid for with what stands here.
    With(&'static str),
}

impl Price {
    fn of(money: Money) -> Self {
        if money > Money::ZERO { Self::Known(money) } else { Self::Open }
    }
}

/// The name of the screw's nut, and of the one that stands by for it.
const NUT: &str = "Nut";
const SECOND_NUT: &str = "Second nut, recommended";

/// What small things are paid for with.
const SMALL: &str = "small parts";

/// One kind of thing to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its number in every list; none for what is no part: sheets, glue, the second nut, and what follows from the parts it joins.
    pub number: Option<u32>,
    /// Its name.
    pub name: &'static str,
    /// Where it stands.
    pub shelf: Shelf,
    /// How many; of what is sold by weight, one.
    pub count: u32,
    /// What it is made from or sold as; none for sheets and glue.
    pub form: Option<Form>,
    /// Three sizes: see [`Form`].
    pub size: [Length; 3],
    /// Mass of all of them.
    pub mass: Mass,
    /// Price of all of them.
    pub price: Price,
    /// Name of a standard it follows, or its class; empty where there is none.
    pub standard: &'static str,
    /// What else to ask for; empty where nothing is.
    pub asked: Phrase,
}

/// Everything to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Bill {
    /// Shelf by shelf: sheets first, then parts by number, glue last.
    pub items: Vec<Item>,
    /// Mass of everything that has a number.
    pub mass: Mass,
    /// Price of what is left of whole bars, cut away and kept; nothing where parts alone are asked about.
    pub rests: Money,
    /// Price of everything small together.
    pub small: Price,
    /// What the known prices come to.
    pub cost: Money,
    /// How many rows would add to it if their price were known; everything small together is one.
    pub unpriced: usize,
}

/// What the table weighs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weights {
    /// Pieces of sheet.
    pub wood: Mass,
    /// Everything bought or cut from bar.
    pub hardware: Mass,
    /// What stands beside the table: props and drill guide, in neither of the two.
    pub aside: Mass,
}

impl Weights {
    /// Of a list of parts.
    #[must_use]
    pub fn of(parts: &[Part]) -> Self {
        let total = |counted: &dyn Fn(&Part) -> bool| {
            parts.iter().filter(|part| counted(part)).map(|part| Mass::kg(part.total())).sum()
        };
        let aside = |part: &Part| part.rides == Rides::Aside;
        Self {
            wood: total(&|part| part.form == Form::Sheet && !aside(part)),
            hardware: total(&|part| part.form != Form::Sheet && !aside(part)),
            aside: total(&aside),
        }
    }

    /// The table, without glue.
    #[must_use]
    pub fn table(&self) -> Mass {
        self.wood + self.hardware
    }
}

/// What to buy for a design, from its parts, the thickness and number of the sheets its layout takes, and the whole bars they are cut from;
/// without bars the parts' own lengths alone are paid for.
#[must_use]
pub fn bill(design: &Design, parts: &[Part], sheets: &[(Length, usize)], bars: &[Bar]) -> Bill {
    let mut items: Vec<Item> =
        sheets.iter().map(|(thickness, count)| sheet(design, *thickness, *count)).collect();
    for part in parts.iter().filter(|part| part.form != Form::Sheet) {
        let mass = Mass::kg(part.total());
        if let Some(known) = items.iter_mut().find(|item| item.number == Some(part.number)) {
            known.count += part.count;
            known.mass += mass;
        } else {
            items.push(item(design, part));
        }
    }
    let mass = items.iter().filter(|item| item.number.is_some()).map(|item| item.mass).sum();
    let second = items.iter().find(|item| item.name == NUT).map(second_nut);
    items.extend(second);
    items.extend(fastenings(design, parts).iter().map(|part| Item { number: None, ..item(design, part) }));
    items.extend([glue(parts), epoxy(parts)].into_iter().filter(|item| item.mass > Mass::ZERO));
    items.sort_by_key(|item| (item.shelf, item.number.unwrap_or(u32::MAX)));
    for item in &mut items {
        item.price = price(design, item);
    }
    let small = Price::of(design.shop.small_price);
    let prices = || items.iter().map(|item| item.price).chain([small]);
    let known = |price: Price| if let Price::Known(money) = price { Some(money) } else { None };
    let rests = bars.iter().filter(|bar| by_length(bar.form)).map(Bar::over);
    let rests = priced(design.shop.bar_price, rests.sum());
    let cost = prices().filter_map(known).sum::<Money>() + rests;
    let unpriced = prices().filter(|price| *price == Price::Open).count();
    Bill { items, mass, rests, small, cost, unpriced }
}

fn item(design: &Design, part: &Part) -> Item {
    Item {
        number: Some(part.number),
        name: part.name,
        shelf: shelf(part),
        count: part.count,
        form: Some(part.form),
        size: part.size,
        mass: Mass::kg(part.total()),
        price: Price::Open,
        standard: standard(design, part),
        asked: asked(design, part),
    }
}

fn sheet(design: &Design, thickness: Length, count: usize) -> Item {
    let shop = &design.shop;
    let count = u32::try_from(count).unwrap_or(u32::MAX);
    let size = [shop.sheet_length, shop.sheet_width, thickness];
    let volume: f64 = size.iter().map(|side| side.to_m()).product();
    let standard = design::panel(design).filter(|_| thickness == design.arms.thickness);
    Item {
        number: None,
        name: "Sheet",
        shelf: Shelf::Sheets,
        count,
        form: None,
        size,
        mass: Mass::kg(f64::from(count) * volume * design.arms.density.to_kg_m3()),
        price: Price::Open,
        standard: standard.map_or("", |panel| panel.name),
        asked: Phrase::default(),
    }
}

fn shelf(part: &Part) -> Shelf {
    match (part.form, part.name) {
        (Form::BronzeTube, _)
        | (_, "Pivot bolt" | "Pivot nut" | "Pivot washer" | "Spacer washer" | "Plastic disc") => {
            Shelf::Pivots
        }
        (
            _,
            "Wheel" | "Wheel axle" | "Half axle" | "Collar" | "Flange washer" | "Cross-bar" | "Tube plug"
            | "Wheel strip" | "Keeper" | "Keeper tube" | "Spring pin",
        ) => Shelf::Wheels,
        (_, "Screw" | NUT | "Bearing tube" | "Thrust bearing" | "Screw collar" | "Crank" | "Crank pin") => {
            Shelf::Screw
        }
        (Form::Bolt | Form::LockNut | Form::Washer | Form::WoodScrew, _) => Shelf::Fasteners,
        _ => Shelf::Frames,
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
        shelf: Shelf::Glue,
        count: 1,
        form: None,
        size: [Length::ZERO; 3],
        mass: Mass::kg(kilograms),
        price: Price::Open,
        standard: "",
        asked: Phrase::default(),
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
        Form::Bought if part.name == NUT => design::thread(design).map_or("", |thread| thread.name),
        _ => "",
    }
}

/// What its sizes and its standard do not say: what the checks count on, and what the cautions ask for.
fn asked(design: &Design, part: &Part) -> Phrase {
    let running = &design.running;
    match part.name {
        NUT => Phrase::new("bronze, with a flange for four bolts"),
        "Caster" => {
            let rating = Amount::Force(running.caster_rating.to_n());
            let kind = if running.caster_trail > Length::ZERO { "swivel" } else { "without swivel" };
            Phrase::new(format!("{kind}, to carry "))
                .with(rating)
                .and(" each, two of the four with a lock at least")
        }
        _ => Phrase::default(),
    }
}

/// The nut that catches the table when the first one strips. It is recommended, not computed: no part, and in no weight of the table.
fn second_nut(nut: &Item) -> Item {
    Item {
        number: None,
        name: SECOND_NUT,
        asked: nut.asked.clone().and(", held behind the first: see Build order"),
        ..nut.clone()
    }
}

/// What is paid for by its length. Battens cost much less than metal and count among the small parts.
const fn by_length(form: Form) -> bool {
    matches!(form, Form::FlatBar | Form::LightBar | Form::RoundBar | Form::SquareTube | Form::BronzeTube)
}

fn priced(rate: Rate, length: Length) -> Money {
    Money::of(rate.to_a_metre() * length.to_m())
}

/// The price of all of an item. There is one price of a sheet, that of the thickness the arms are cut from.
fn price(design: &Design, item: &Item) -> Price {
    let shop = &design.shop;
    let count = i64::from(item.count);
    match (item.form, item.name) {
        (None, "Sheet") if item.size[2] == design.arms.thickness => Price::of(shop.sheet_price * count),
        (None, "Sheet") => Price::Open,
        (Some(form), _) if by_length(form) => {
            Price::of(priced(shop.bar_price, item.size[0] * i64::from(item.count)))
        }
        (Some(Form::ThreadedBar), _) => Price::of(shop.screw_price),
        (_, NUT | SECOND_NUT) => Price::With("screw"),
        (Some(Form::Bearing), "Wheel") => Price::of(shop.bearing_price * count),
        (Some(Form::Bearing), _) => Price::of(shop.bearing_price * (THRUST_PRICE * count)),
        (_, "Pivot bolt") => Price::of(shop.bolt_price * count),
        (_, "Pivot nut" | "Pivot washer" | "Spacer washer" | "Plastic disc") => Price::With("pivot bolt"),
        (_, "Caster") => Price::of(shop.caster_price * count),
        _ => Price::With(SMALL),
    }
}

impl Item {
    /// What to ask for in a shop, in the units of a system; bolts and screws in those they are sold in, which stand behind them.
    #[must_use]
    pub fn designation(&self, system: System) -> String {
        let [first, second, third] = self.size;
        let length = |value: Length, system: System| print(value.steps(), Kind::Length, system, Style::Short);
        let own = if (BoltSize { diameter: second }).is_inch() { System::Inch } else { System::Metric };
        let here = |value: Length| figures::laid(value, system).number;
        let thread = || {
            let thread = BoltSize { diameter: second }.thread();
            thread.map_or_else(|| length(second, own).text(), str::to_owned)
        };
        let words = match self.form {
            None if first == Length::ZERO => String::new(),
            None => format!("{} × {}, {} thick", here(first), here(second), here(third)),
            Some(Form::Bolt) => format!("{} × {}", thread(), length(first, own)),
            Some(Form::LockNut) => format!("{}, self-locking", thread()),
            Some(Form::WoodScrew) => format!("{} × {}", length(second, own).number, length(first, own)),
            Some(Form::Washer) => {
                format!("{} outside, {} bore, {} thick", here(second), here(third), here(first))
            }
            Some(Form::Bearing) => {
                format!("{} outside, {} bore, {} wide", here(second), here(third), here(first))
            }
            Some(Form::BronzeTube) => {
                format!("{} outside, {} bore, {} long", here(second), here(third), here(first))
            }
            Some(Form::RoundBar) => format!("round {}, {} long", here(second), here(first)),
            Some(Form::SquareTube) => {
                format!("square {}, wall {}, {} long", here(second), here(third), here(first))
            }
            Some(Form::FlatBar | Form::LightBar | Form::Batten) => {
                format!("{} × {}, {} long", here(second), here(third), here(first))
            }
            Some(Form::ThreadedBar) => {
                let lead = figures::threads(third, system).map_or_else(|| here(third), |lead| lead.number);
                format!("{} outside, {lead} lead, {} long", here(second), here(first))
            }
            Some(Form::Bought | Form::Sheet) => match self.name {
                NUT | SECOND_NUT => {
                    let plain = || format!("for a thread of {}", here(third));
                    let thread = Some(self.standard).filter(|name| !name.is_empty());
                    let thread = thread.map_or_else(plain, str::to_owned);
                    format!("{thread}, {} across, {} long", here(second), here(first))
                }
                "Spring pin" | "Crank pin" => {
                    format!("slotted, {} × {}", length(second, own).number, length(first, own))
                }
                "Keeper tube" => {
                    format!("{} outside, {} bore, {} long", here(second), here(third), here(first))
                }
                "Collar" | "Screw collar" => {
                    format!("{} outside, {} bore, {} wide", here(second), here(third), here(first))
                }
                "Caster" => format!("{} high, wheel {}", here(first), here(second)),
                "Crank" => {
                    format!("{} from axis to handle, flat {} × {}", here(first), here(second), here(third))
                }
                _ => format!("{} × {}, {} thick", here(first), here(second), here(third)),
            },
        };
        let asked = self.asked.text(system);
        // A nut's thread stands in front of its sizes.
        let standard = if words.starts_with(self.standard) { "" } else { self.standard };
        let said = [words.as_str(), standard, &asked].into_iter().filter(|words| !words.is_empty());
        said.collect::<Vec<_>>().join(", ")
    }
}

/// Money as the reader writes it, without a currency.
#[must_use]
pub fn money_text(money: Money) -> String {
    print(money.steps(), Kind::Money, System::Metric, Style::Full).number
}
