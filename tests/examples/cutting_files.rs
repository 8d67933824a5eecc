//! Writes the DXF files of both demos into a folder, for a reader outside this project: `cutting_files FOLDER`.
//!
//! Beside each file stands one of the same name with `.sizes`: the number of closed outlines on the layer OUTLINE, then the length and width
//! of each, mm.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "it stops at the first surprise")]

use risewright::design::Demo;
use risewright::parts::{Form, parts};
use risewright::share::{dxf, flat};
use risewright::workshop::sheets::{Search, jobs};
use std::path::Path;

fn main() {
    let folder = std::env::args().nth(1).expect("the folder to write to");
    let write = |name: &str, text: String, sizes: &[[f64; 2]]| {
        let path = Path::new(&folder).join(name);
        std::fs::write(path.with_extension("dxf"), text).expect("the folder can be written to");
        let lines: Vec<String> = sizes.iter().map(|[long, wide]| format!("{long:.4} {wide:.4}\n")).collect();
        std::fs::write(path.with_extension("sizes"), lines.concat()).expect("the folder can be written to");
    };
    for demo in Demo::ALL {
        let design = demo.design();
        let list = parts(&design);
        for part in list.iter().filter(|part| {
            matches!(part.form, Form::Sheet | Form::FlatBar | Form::LightBar | Form::SquareTube)
        }) {
            let name = format!("{}-part-{}", demo.letter(), part.number);
            let size = [part.size[0].to_mm(), part.size[1].to_mm()];
            write(&name, dxf::write(&flat::part(part)), &[size]);
        }
        for (at, job) in jobs(&design, &list).iter().enumerate() {
            let mut search = Search::new(job);
            search.advance(2000);
            for (number, sheet) in search.best().sheets.iter().enumerate() {
                let name = format!("{}-sheet-{at}-{number}", demo.letter());
                let sizes: Vec<[f64; 2]> =
                    sheet.placed.iter().map(|placed| [placed.length.to_mm(), placed.width.to_mm()]).collect();
                write(&name, dxf::write(&flat::sheet(job, sheet)), &sizes);
            }
        }
    }
}
