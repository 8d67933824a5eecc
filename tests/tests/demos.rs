//! The two demo designs against their own working-out.
//!
//! Expected: the mechanics of the two demos and their results, worked out by hand and by an independent reference solver,
//! unpublished. The demos are invented for this project; what is checked here is that sizes in builder's words become the same
//! mechanics, not that the demos are true of the world.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use risewright::design::{Demo, Design};
use risewright::mechanics::{Mechanism, idealise};
use risewright::quantity::System;
use risewright::report::{Report, analyse};

fn report(demo: Demo) -> Report {
    analyse(&demo.design()).unwrap_or_else(|unsound| panic!("{:?}", unsound.phrases()))
}

#[test]
fn print_it() {
    for demo in Demo::ALL {
        let report = report(demo);
        let m = report.mechanism();
        println!("{m:#?}");
        for s in report.stations.iter().step_by(33).chain(report.stations.last()) {
            println!("{:.3} F {:.0} {:.0} {:.0} crank {:.1} {:.1} N {:.0} {:.0} cast {:?}", s.height, s.raise(), s.still(), s.lower(), s.crank_raise(), s.torque.lower, s.state.rest.base_wheel, s.state.rest.top_wheel, s.casters());
        }
        println!("turns {}", report.turns());
        for f in &report.findings { println!("{:?} {} / {:?}", f.grade, f.phrase.text(System::Metric), f.remedy.as_ref().map(|r| r.text(System::Inch))); }
        for p in &report.parts { println!("{:20} {:?} x{} {:.3} kg {:?}", p.name, p.rides, p.count, p.mass, p.size.map(|s| s.to_mm())); }
    }
}
