//! Lists that a builder buys and builds from, over every kind of drive: one screw is one bar, whole bars are paid for, nothing is used
//! before it is there.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use std::f64::consts::PI;
use std::rc::Rc;

use risewright::design::{BearingEnd, Demo, Design, DriveKind, StrutEnd};
use risewright::mechanics::free;
use risewright::pages::{Reader, page};
use risewright::parts::{Form, Part, Rides, parts};
use risewright::quantity::{Length, Money, Rate, System};
use risewright::report::analyse;
use risewright::share::address::View;
use risewright::workshop::hardware::{Price, bill};
use risewright::workshop::sheets::bars;

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
            assert!((bill.cost.value() - wanted).abs() < 0.01 * bill.items.len() as f64, "{wanted} and {:?}", bill.cost);
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
