#![allow(clippy::all, clippy::disallowed_methods, clippy::unwrap_used)]
use risewright::design::Demo;
use risewright::drawing::*;
use risewright::quantity::System;
fn main() {
    for (d, s, l) in [(Demo::PaperLift, System::Metric, "a"), (Demo::PottingBench, System::Inch, "b")] {
        let report = risewright::report::analyse(&d.design()).unwrap();
        for c in Chart::ALL {
            let p = Plotted::of(c, &report, s);
            std::fs::write(format!("/tmp/elev/{l}-{c:?}.svg"), p.svg()).unwrap();
            if c == Chart::ScrewForce || c == Chart::Tilt {
                let csv = risewright::share::plot::csv(&p);
                println!("{}\n{}", risewright::share::plot::file_name(&p, "csv"), csv.lines().take(4).collect::<Vec<_>>().join("\n"));
                let t = p.table();
                println!("{} {:?} {}", t.caption, t.head, t.rows.len());
                for r in t.rows.iter().step_by(5) { println!("{:?}", r); }
                println!("{}", p.words(0.7));
            }
        }
        for f in &report.findings { println!("{:?} {} || {:?}", f.grade, f.phrase.text(s), f.remedy.as_ref().map(|r| r.text(s))); }
    }
}
