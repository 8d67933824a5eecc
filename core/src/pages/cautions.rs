//! What can hurt, in the words that stand beside the crank, in the packet and on paper.

/// The cautions. They defer to local rules and to licensed practice; general workshop practice, no source.
pub const CAUTIONS: [&str; 8] = [
    "The arms close like shears. Low down a single turn drops the deck several times as far as high up: keep hands out.",
    "Never reach in or lie under a raised deck unless a solid prop stands beneath it. The prop and the end stops belong to the table; build them with it.",
    "Nobody rides on the deck.",
    "Lock or chock the casters before raising, and keep the load inside the deck: what hangs over tips the table or lifts a wheel out of its rail.",
    "If the nut strips, the table falls. A second nut behind it, held captive and not bearing, costs little.",
    "A ball screw, or a thread with a long lead, does not stay where you let go of it.",
    "No two sheets of plywood are alike. Before first use, test low down and with a quarter more than the load.",
    "Rules for lifting tables, machine guards and workplaces where you live go before anything shown here; a table that carries people or stands over them is a task for a licensed engineer.",
];
