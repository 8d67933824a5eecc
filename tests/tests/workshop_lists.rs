//! Lists that a builder buys and builds from, over every kind of drive: one screw is one bar, whole bars are paid for, nothing is used
//! before it is there.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use std::collections::BTreeMap;
use std::f64::consts::PI;
use std::rc::Rc;

use risewright::design::{BearingEnd, Demo, Design, DriveKind, StrutEnd};
use risewright::mechanics::{Solver, free, idealise};
use risewright::pages::{Reader, page};
use risewright::parts::{Form, Part, Rides, parts};
use risewright::quantity::{Length, Money, Rate, System};
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::workshop::hardware::{Price, bill};
use risewright::workshop::sheets::bars;
use risewright::workshop::steps::{Step, Task, steps};

const SYSTEMS: [System; 2] = [System::Metric, System::Inch];

/// Both demos with every kind of drive, from either end, and struts from frame to frame, frame to arm and arm to arm.
fn driven() -> Vec<Design> {
    let mut list = Vec::new();
    for demo in Demo::ALL {
        let mut with = |kind, end, [foot, head]: [StrutEnd; 2]| {
            let mut design = demo.design();
            design.drive.kind = kind;
            design.drive.bearing_end = end;
            (design.drive.foot, design.drive.head) = (foot, head);
            list.push(design);
        };
        let usual = [StrutEnd::Base, StrutEnd::B1];
        for end in [BearingEnd::Fixed, BearingEnd::Far] {
            with(DriveKind::BaseCarriage, end, usual);
            with(DriveKind::TopCarriage, end, usual);
        }
        with(DriveKind::SidePivots, BearingEnd::Fixed, usual);
        for ends in [
            usual,
            [StrutEnd::A1, StrutEnd::Deck],
            [StrutEnd::Base, StrutEnd::Deck],
            [StrutEnd::A1, StrutEnd::B1],
        ] {
            with(DriveKind::Strut, BearingEnd::Fixed, ends);
        }
    }
    list
}

/// The screw is one bar of its full length in every list, and weighs as a bar of its mean diameter does (steel, 7850 kg/m3): where it hangs
/// between two points half of that hangs on each, so that the mechanics gets all of it.
#[test]
fn one_screw_is_one_bar() {
    for design in driven() {
        let list = parts(&design);
        let drive = &design.drive;
        let screws: Vec<&Part> = list.iter().filter(|part| part.name == "Screw").collect();
        assert_eq!(screws.len(), 1, "{:?}", drive.kind);
        let screw = screws[0];
        assert_eq!((screw.count, screw.size[0]), (1, drive.screw_length));
        let weighs = 7850.0 * PI / 4.0 * drive.mean.to_m().powi(2) * drive.screw_length.to_m();
        assert!((screw.total() / weighs - 1.0).abs() < 1e-6, "{} and {weighs}", screw.total());
        let bill = bill(&design, &list, &[], &[]);
        let item = bill.items.iter().find(|item| item.name == "Screw").unwrap();
        assert_eq!((item.count, item.size[0]), (1, drive.screw_length));
        for system in SYSTEMS {
            let threaded: Vec<_> = bars(&list, design.shop.kerf, system)
                .into_iter()
                .filter(|bar| bar.form == Form::ThreadedBar)
                .flat_map(|bar| bar.cuts)
                .collect();
            assert_eq!(threaded, [(screw.number, drive.screw_length)]);
        }
        // What rides on points of arms, with the screw's share, is what the mechanics hangs there.
        let hung = |list: &[Part]| -> f64 {
            let on_arms = list.iter().flat_map(Part::loads).filter(|(on, _)| matches!(on, Rides::OnArm(..)));
            on_arms.map(|(_, mass)| mass).sum()
        };
        let lumps: f64 = free(&design).lumps.iter().map(|lump| lump.mass).sum();
        assert!((hung(&list) - lumps).abs() < 1e-9, "{} and {lumps}", hung(&list));
        let shares: Vec<f64> = screw.loads().map(|(_, mass)| mass).collect();
        let share = weighs / shares.len() as f64;
        assert!(shares.iter().all(|mass| (mass / share - 1.0).abs() < 1e-6), "{shares:?}");
        let between = matches!(drive.kind, DriveKind::SidePivots | DriveKind::Strut);
        assert_eq!(shares.len(), if between { 2 } else { 1 });
    }
}

/// What is paid for bars is what the list of bars to buy comes to, at so much a metre; the screw's bar and battens have prices of their own.
#[test]
fn whole_bars_are_paid_for() {
    for mut design in driven() {
        design.shop.bar_price = Rate::a_metre(4.0);
        let list = parts(&design);
        for system in SYSTEMS {
            let bars = bars(&list, design.shop.kerf, system);
            let bill = bill(&design, &list, &[], &bars);
            let metal = bars.iter().filter(|bar| !matches!(bar.form, Form::ThreadedBar | Form::Batten));
            let metres: f64 = metal.map(|bar| bar.length.to_m()).sum();
            // A cent a row is lost in rounding at most.
            let wanted = 4.0 * metres;
            assert!(
                (bill.cost.value() - wanted).abs() < 0.01 * bill.items.len() as f64,
                "{wanted} and {:?}",
                bill.cost
            );
            let rows: Money = bill
                .items
                .iter()
                .filter_map(|item| if let Price::Known(money) = item.price { Some(money) } else { None })
                .sum();
            assert_eq!(rows + bill.rests, bill.cost);
            assert!(bill.rests > Money::ZERO);
            let battens = bill.items.iter().filter(|item| item.form == Some(Form::Batten));
            assert!(battens.clone().count() > 0);
            assert!(battens.clone().all(|item| item.price == Price::With("small parts")));
        }
    }
}

fn told(view: View, design: &Design, system: System) -> String {
    let mut page = page(view, &Rc::new(analyse(design).unwrap())).unwrap();
    while page.advance() {}
    let reader = Reader { system, address: "https://example.org/".into(), date: "2026-01-31".into() };
    page.document(&reader).html().replace('\u{A0}', " ")
}

/// The row that leaves sheets and glue out has a weight and no price; what it all costs stands in a row of its own.
#[test]
fn the_sum_says_what_is_in_it() {
    let mut design = Demo::PottingBench.design();
    design.shop.sheet_price = Money::of(65.0);
    design.shop.bar_price = Rate::a_metre(4.0);
    design.shop.screw_price = Money::of(40.0);
    design.shop.bearing_price = Money::of(5.0);
    design.shop.caster_price = Money::of(9.0);
    design.shop.bolt_price = Money::of(3.0);
    design.shop.small_price = Money::of(30.0);
    let html = told(View::Hardware, &design, System::Inch);
    let row = |name: &str| {
        let found = html.split("<tr").find(|row| row.contains(&format!("<strong>{name}</strong>")));
        found.unwrap_or_else(|| panic!("{name}")).to_owned()
    };
    let cost = html.split("It costs <strong>").nth(1).unwrap().split('<').next().unwrap();
    assert!(row("Cost in all").contains(&format!(">{cost}<")), "{cost}");
    assert!(!row("Weight of the hardware").contains(cost));
    assert!(html.contains("Rests of the bars"));
    assert!(design.shop.sheet_price > Money::ZERO && !html.contains("no price"));
}

/// What carries a piece: the names of which one at least must be there before it.
fn carriers(rides: Rides) -> &'static [&'static str] {
    match rides {
        Rides::Base(_) => &["Base beam"],
        Rides::Deck(_) => &["Deck rail"],
        Rides::BaseCarriage | Rides::DeckCarriage => &["Wheel axle", "Half axle"],
        Rides::Arm(_) | Rides::OnArm(..) => &["Arm A", "Arm B"],
        Rides::Aside => &[],
    }
}

/// Words of the build order and the part they speak of.
const SPOKEN: [(&str, &str); 14] = [
    ("bearing tube", "Bearing tube"),
    ("base beams", "Base beam"),
    ("deck rails", "Deck rail"),
    ("under the rails", "Deck rail"),
    ("end stops", "End stop"),
    ("keepers", "Keeper"),
    ("casters", "Caster"),
    ("strips", "Wheel strip"),
    ("pivot cheeks", "Base pivot cheek"),
    ("crank", "Crank"),
    ("first one’s flange", "Nut"),
    ("props", "Prop"),
    ("bushing", "Bushing"),
    ("deck wheels", "Wheel"),
];

/// Whatever drives the table, no step uses a piece that is not there yet: not as what carries a new piece, not in its words; and nothing is
/// put between two bodies before they are joined.
#[test]
fn nothing_is_used_before_it_is_there() {
    for design in driven() {
        let list = parts(&design);
        let mechanism = idealise(&design).and_then(|mechanism| Solver::new(&mechanism));
        let Some(steps) = mechanism.ok().and_then(|solver| steps(&design, &list, &solver).ok()) else {
            // A drive that cannot stand has no build order.
            continue;
        };
        let kind = design.drive.kind;
        let named = |number: u32| list.iter().filter(move |part| part.number == number);
        let mut come: BTreeMap<u32, u32> = BTreeMap::new();
        for step in &steps {
            for fitted in &step.parts {
                *come.entry(fitted.number).or_default() += fitted.count;
            }
            let here = |name: &str| come.keys().any(|number| named(*number).any(|part| part.name == name));
            for (number, count) in &come {
                let carried = |part: &Part| {
                    part.loads().all(|(on, _)| {
                        let by = carriers(on);
                        by.is_empty() || by.contains(&part.name) || by.iter().any(|name| here(name))
                    })
                };
                let room: u32 = named(*number).filter(|part| carried(part)).map(|part| part.count).sum();
                let name = named(*number).next().unwrap().name;
                assert!(*count <= room, "{kind:?}: {name} at {:?}: {count} of {room}", step.task);
            }
            let words = step.work.iter().chain(&step.tests).map(|phrase| phrase.text(System::Metric));
            let words = words.collect::<Vec<_>>().join(" ").to_lowercase();
            for (word, name) in SPOKEN {
                assert!(!words.contains(word) || here(name), "{kind:?}: “{word}” at {:?}", step.task);
            }
        }
        let place = |task: Task| steps.iter().position(|step| step.task == task).unwrap();
        assert!(place(Task::OntoBase) < place(Task::Screw).min(place(Task::DeckOn)));
        let drives = ["Screw", "Bearing tube", "Nut", "Thrust bearing", "Crank"];
        let mut on_deck = list.iter().filter(|part| drives.contains(&part.name)).flat_map(Part::loads);
        if on_deck.any(|(on, _)| matches!(on, Rides::Deck(_) | Rides::DeckCarriage)) {
            assert!(place(Task::DeckOn) < place(Task::Screw), "{kind:?}");
        }
        // The deck is taken to its ends by the screw, with the deck on.
        let levels = |step: &Step| {
            step.tests.iter().any(|test| test.text(System::Metric).contains("At the highest deck"))
        };
        let both = place(Task::DeckOn).max(place(Task::Screw));
        assert_eq!(steps.iter().position(levels), Some(both), "{kind:?}");
        let text: String =
            steps[place(Task::Screw)].work.iter().map(|phrase| phrase.text(System::Metric)).collect();
        assert!(!text.contains("across the frame"));
    }
}

/// The packet's first line has the thread and the thickness one asks for in a shop, not their nearest sixteenths: 3/4-6 Acme has a lead of a
/// sixth of an inch (ASME B1.5), and the plywood is 23/32.
#[test]
fn the_packet_is_headed_by_what_one_asks_for() {
    let [paper, bench] = Demo::ALL.map(|demo| demo.design());
    let headed = |design: &Design, system, words: &str| {
        let html = told(View::Packet, design, system);
        let start = html.find("pin to pin of").unwrap();
        assert!(html[start..].starts_with(words), "{}", &html[start..][..120]);
    };
    headed(&bench, System::Inch, "pin to pin of 2 × 23/32 by 3, screw 3/4-6 Acme under the deck;");
    headed(&paper, System::Metric, "pin to pin of 2 × 18 by 75, screw Tr 20 x 4 in the base;");
    headed(&paper, System::Inch, "pin to pin of 2 × ≈45/64 by ≈2 61/64, screw Tr 20 x 4 in the base;");
    // A thread of no table is told by its sizes.
    let mut own = bench;
    own.drive.lead = Length::inch(1.0 / 5.0);
    own.drive.pitch = own.drive.lead;
    headed(&own, System::Inch, "pin to pin of 2 × 23/32 by 3, screw 3/4 × 1/5 under the deck;");
}

/// Who reads inches is told no millimetres; what is read on paper does not speak of a field here.
#[test]
fn words_are_in_the_readers_units() {
    let design = Demo::PottingBench.design();
    let drilling = told(View::Drilling, &design, System::Inch);
    assert!(drilling.contains("they may be off by ≈3/64 in."));
    assert!(told(View::Drilling, &design, System::Metric).contains("they may be off by 1.0 mm."));
    let mut tight = Demo::PaperLift.design();
    tight.running.wheel_place = Length::mm(236.0);
    let report = analyse(&tight).unwrap();
    let advice: Vec<String> = report
        .findings
        .iter()
        .filter(|finding| finding.phrase.text(System::Inch).contains("between them"))
        .filter_map(|finding| Some(finding.remedy.as_ref()?.text(System::Inch)))
        .collect();
    assert!(!advice.is_empty() && advice.iter().all(|text| !text.contains("millimetre")), "{advice:?}");
    let packet = told(View::Packet, &design, System::Inch);
    assert!(!packet.contains("the mean here") && packet.contains("the mean in the program"));
}

/// What the words of the parts and of the build order ask for is on the list: spacer tubes, pins, screws of stops and cleats, bolts of the
/// bearing tube, as many as there are things to hold, each as long as what it joins, and in no weight of the table.
#[test]
fn what_holds_the_parts_is_on_the_list() {
    for design in driven() {
        let list = parts(&design);
        let kind = design.drive.kind;
        let count =
            |name: &str| -> u32 { list.iter().filter(|part| part.name == name).map(|part| part.count).sum() };
        let bill = bill(&design, &list, &[], &[]);
        let bought = |name: &str| -> u32 {
            let items = bill.items.iter().filter(|item| item.name == name);
            items
                .inspect(|item| assert_eq!(item.number, None, "{name} is no part"))
                .map(|item| item.count)
                .sum()
        };
        let size = |name: &str| bill.items.iter().find(|item| item.name == name).unwrap().size;
        assert_eq!(bought("Spring pin"), count("Tube plug"), "{kind:?}");
        assert_eq!(bought("Crank pin"), 1);
        assert_eq!(bought("Keeper tube"), count("Keeper screw"));
        assert_eq!(bought("Stop screw"), 2 * count("End stop"));
        assert_eq!(bought("Cleat screw"), 2 * 2 * 2 * count("Prop"));
        for name in ["Bearing tube bolt", "Bearing tube nut"] {
            assert_eq!(bought(name), 2 * count("Bearing tube"), "{kind:?}");
        }
        // From the rail beside the strip up to the keeper: strip, wheel and gap. What is left of the screw holds in the rail.
        let (running, strip) = (&design.running, design.frames.strip_thickness);
        assert_eq!(size("Keeper tube")[0], running.wheel + running.rail_gap + strip);
        let screw = list.iter().find(|part| part.name == "Keeper screw").unwrap();
        assert!(
            size("Keeper tube")[0] + strip + screw.size[2] == screw.size[0]
                && size("Keeper tube")[2] > screw.size[1]
        );
        // A screw through a stop holds in the beam and does not come out of it beneath.
        let hold = size("Stop screw")[0] - running.wheel;
        assert!(hold >= Length::mm(20.0) && hold < design.frames.beam_depth, "{hold:?}");
        if count("Tube plug") > 0 {
            let [long, thick, _] = size("Spring pin");
            assert!(long <= design.drive.cross_bar && thick * 3 < running.axle, "{long:?} {thick:?}");
        }
        let table: f64 = list.iter().filter(|part| part.form != Form::Sheet).map(Part::total).sum();
        assert!((bill.mass.to_kg() - table).abs() < 1e-5);
    }
    let steps = told(View::Steps, &Demo::PaperLift.design(), System::Metric);
    for words in [
        "a spacer tube on every screw",
        "Glue each to its beam, and drive 2 screws of",
        "a spring pin at every plug",
        "4 cleats each",
    ] {
        assert!(steps.contains(words), "{words}");
    }
    let hardware = told(View::Hardware, &Demo::PaperLift.design(), System::Metric);
    assert!(hardware.contains("slotted, 5 × 50 mm") && hardware.contains(">Keeper tube<"));
}
