//! Cuts and hints in words.
use crate::pages::document::Text;
use crate::quantity::{Amount, Length, System, figures};
use crate::workshop::sheets::{Hint, Job, Pass};

/// Two sides with their unit.
pub(super) fn size([length, width]: [Length; 2], system: System) -> String {
    format!("{} × {}", figures::marked(length, system).number, figures::marked(width, system))
}

/// So many of a thing, in the plural but for one.
pub(super) fn counted(count: usize, thing: &str) -> String {
    match (count, thing) {
        (1, _) => format!("1 {thing}"),
        (_, "offcut at hand") => format!("{count} offcuts at hand"),
        _ => format!("{count} {thing}s"),
    }
}

/// The numbers of the parts in jobs, in order.
pub(super) struct Names {
    pub parts: Vec<u32>,
}

impl Names {
    pub(super) fn of<'a>(jobs: impl Iterator<Item = &'a Job>) -> Self {
        let mut parts: Vec<u32> = jobs.flat_map(|job| job.pieces.iter().map(|piece| piece.part)).collect();
        parts.sort_unstable();
        parts.dedup();
        Self { parts }
    }
}

/// One setting of the fence: what is cut, where, and what comes of it.
pub(super) fn pass_words(job: &Job, pass: &Pass, system: System) -> String {
    let Some(first) = pass.firsts.first() else { return String::new() };
    let from = first.from;
    let plain = |length: Length| figures::marked(length, system).number;
    let way = if first.across { "Across" } else { "Along" };
    let board = format!("{} × {}", plain(from.length), plain(from.width));
    let boards = match pass.firsts.len() {
        1 => board,
        many => format!("{many} boards {board}"),
    };
    let mut words = format!("{way} {boards}, fence at {}", plain(pass.fence));
    if pass.times > 1 {
        let each = if pass.firsts.len() > 1 { " each" } else { "" };
        words += &format!(", {} cuts{each}", pass.times);
    }
    let mut freed: Vec<(&str, u32, usize)> = Vec::new();
    for piece in pass.freed.iter().filter_map(|at| job.pieces.get(*at)) {
        match freed.iter_mut().find(|(_, part, _)| *part == piece.part) {
            Some((.., count)) => *count += 1,
            None => freed.push((&piece.name, piece.part, 1)),
        }
    }
    let list: Vec<String> =
        freed.iter().map(|(name, part, count)| format!("{count} {name} ({part})")).collect();
    if list.is_empty() {
        let sides = if first.across { [pass.fence, from.width] } else { [from.length, pass.fence] };
        words + &format!(": {} × {} comes off.", plain(sides[0]), plain(sides[1]))
    } else {
        words + ": " + &list.join(", ") + "."
    }
}

/// A change that saves a sheet.
pub(super) fn hint(hint: &Hint, system: System) -> Text {
    let by = |by: &Length| Amount::AtLeast(by.to_m()).text(system);
    match hint {
        Hint::LongerSheet(more) => Text::default().words("The sheet ").strong(by(more)).words(" longer"),
        Hint::WiderSheet(more) => Text::default().words("The sheet ").strong(by(more)).words(" wider"),
        Hint::Narrower(part, name, less) => {
            Text::default().words(format!("{name} ({part}) ")).strong(by(less)).words(" narrower")
        }
        Hint::Shorter(part, name, less) => {
            Text::default().words(format!("{name} ({part}) ")).strong(by(less)).words(" shorter")
        }
    }
}
