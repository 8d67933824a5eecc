//! Lists that a builder buys and builds from, over every kind of drive: one screw is one bar, whole bars are paid for, nothing is used
//! before it is there.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use std::f64::consts::PI;

use risewright::design::{BearingEnd, Demo, Design, DriveKind, StrutEnd};
use risewright::mechanics::free;
use risewright::parts::{Form, Part, Rides, parts};
use risewright::quantity::{Length, System};
use risewright::workshop::hardware::bill;
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
        let bill = bill(&design, &list, &[]);
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
