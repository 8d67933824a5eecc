//! From a mechanism as JSON text to its results as JSON, SI units throughout.

use risewright::checks::{Bare, Level, bare};
use risewright::mechanics::frame3::{Frame3, Stiffness3};
use risewright::mechanics::{ArmId, Detail, JointId, Limits, Mechanism, Movement, Pose, Solver, State};
use serde::Deserialize;
use serde_json::{Map, Value, json};

#[derive(Deserialize)]
struct Heights {
    heights: Vec<f64>,
}

/// Limits and results of the mechanism in `text`: `{"limits": {...}, "results": [...]}`.
///
/// The keys of `text` are those of [`Mechanism`], besides `heights`, a list of deck heights over the floor in metres,
/// which may lie outside the limits. One result a height in the order given; what a mechanism has no answer for is
/// null.
///
/// # Errors
/// What is wrong with the text or the mechanism, or the first height that cannot be answered, as one line.
pub fn answer(text: &str) -> Result<Value, String> {
    let mechanism: Mechanism = serde_json::from_str(text).map_err(|fault| fault.to_string())?;
    let Heights { heights } = serde_json::from_str(text).map_err(|fault| fault.to_string())?;
    let solver = Solver::new(&mechanism)
        .map_err(|faults| faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))?;
    let results = heights
        .into_iter()
        .map(|height| {
            let at = |fault| format!("at height {height}: {fault}");
            let pose = solver.pose_at_height(height).map_err(at)?;
            let state = solver.state(&pose, Detail::ALL).map_err(at)?;
            let mut result = result(&pose, &state);
            if let Some(motion) = &state.motion {
                let level = Level {
                    deck: height,
                    pose: &pose,
                    state: &state,
                    motion,
                    torque: motion.torque,
                    deflection: state.deflection.as_ref(),
                };
                result["strength"] =
                    bare(&solver, level).map_err(at)?.map_or(Value::Null, |bare| strength(&bare));
            }
            // A screw that is neither along the base nor along the top frame has no space frame.
            if mechanism.model3d.is_some() {
                result["m3d"] =
                    Frame3::new(&mechanism, &pose).map_or(Value::Null, |frame| space(&frame.answers()));
            }
            Ok(result)
        })
        .collect::<Result<Vec<Value>, String>>()?;
    Ok(json!({ "limits": limits(solver.limits()), "results": results }))
}

/// The least angle here is the larger of carriage stop and nesting; that of flat stages is not part of it.
fn limits(limits: &Limits) -> Value {
    json!({
        "theta_carriage_min": limits.theta_carriage_min,
        "theta_nest_min": limits.theta_nest_min,
        "pin_clearance_needed": limits.pin_clearance_needed,
        "theta_min": limits.theta_carriage_min.max(limits.theta_nest_min.unwrap_or(0.0)),
        "theta_max": limits.theta_max,
        "H_low": limits.height_low,
        "H_high": limits.height_high,
        "screw_travel": limits.screw_travel,
        "turns": limits.turns,
    })
}

fn result(pose: &Pose, state: &State) -> Value {
    let rest = &state.rest;
    let joints: Map<String, Value> = JointId::all(pose.n)
        .map(|joint| (joint.to_string(), json!([rest.joint(joint).x, rest.joint(joint).y])))
        .collect();
    let sections = state.sections.as_deref().unwrap_or_default();
    let arm_internal: Map<String, Value> = ArmId::all(pose.n)
        .zip(sections)
        .map(|(arm, worst)| {
            let values = json!({
                "M": worst.moment,
                "at_f": worst.at / pose.arm_length,
                "N_min": worst.n_min,
                "N_max": worst.n_max,
            });
            (arm.to_string(), values)
        })
        .collect();
    let motion = state.motion.as_ref();
    let torque = motion.and_then(|motion| motion.torque);
    json!({
        "deck_height": pose.deck_height,
        "theta": pose.theta,
        "carriage_x": pose.carriage_x,
        "top_axle_x": pose.top_axle.x,
        "top_tilt": pose.phi,
        "top_pivot_x": pose.top.origin.x,
        "screw_length": state.screw_length,
        "F0": rest.drive,
        "N_axial0": state.screw_force,
        "dH_ds": state.advantage,
        "NB": rest.base_wheel,
        "NT": rest.top_wheel,
        "joints": joints,
        "uplift": {
            "base_wheel": state.uplift.base_wheel,
            "top_wheel": state.uplift.top_wheel,
            "base_pivot": state.uplift.base_pivot,
            "top_pivot": state.uplift.top_pivot,
        },
        "arm_internal": arm_internal,
        "M_max": sections.iter().fold(0.0, |most: f64, worst| most.max(worst.moment)),
        "F_raise": motion.map(|motion| motion.raise.drive),
        "F_lower": motion.map(|motion| motion.lower.drive),
        "T_raise": torque.map(|torque| torque.raise),
        "T_lower": torque.map(|torque| torque.lower),
        "self_locking_screw": torque.map(|torque| torque.self_locking),
        "crank_force": torque.and_then(|torque| torque.crank_raise),
        "eff_total": torque.and_then(|torque| torque.efficiency),
        "caster_left": state.casters.map(|casters| casters[0]),
        "caster_right": state.casters.map(|casters| casters[1]),
        "k_drive": state.drive_stiffness,
        "deflection": state.deflection.as_ref().map(|deflection| json!({
            "drop": movement(&deflection.drop),
            "tilt": movement(&deflection.tilt),
            "drift": movement(&deflection.drift),
        })),
    })
}

/// What a screw that is only pulled does not have is left out.
fn strength(bare: &Bare) -> Value {
    let mut strength = json!({
        "arm_net_stress": bare.net_stress.0,
        "arm_net_worst": bare.net_stress.1.to_string(),
        "arm_net_shear": bare.net_shear,
        "arm_gross_stress": bare.gross_stress.0,
        "arm_gross_worst": bare.gross_stress.1.to_string(),
        "arm_compression": bare.compression,
        "arm_Ncr_in": bare.critical.map(|critical| critical[0]),
        "arm_Ncr_out": bare.critical.map(|critical| critical[1]),
        "pin_worst": bare.pin.1.to_string(),
        "pin_R": bare.pin.0,
        "pin_tau": bare.pin_shear,
        "pin_sigma": bare.pin_bending,
        "embed": bare.embedment,
    });
    if let Some(screw) = &bare.screw {
        strength["screw_sigma"] = json!(screw.axial);
        strength["screw_tau"] = json!(screw.twist);
        strength["screw_vm"] = json!(screw.mises);
        strength["screw_in_compression"] = json!(screw.column.is_some());
        if let Some((slenderness, critical)) = screw.column {
            strength["screw_slenderness"] = json!(slenderness);
            strength["screw_Fcr"] = json!(critical);
        }
        strength["thread_bearing"] = json!(screw.pressure);
        strength["thread_shear_nut"] = json!(screw.shear_nut);
        strength["washer_pressure"] = json!(screw.washer);
    }
    strength
}

fn space(stiffness: &Stiffness3) -> Value {
    json!({
        "k_sway": stiffness.sway,
        "k_twist": stiffness.twist,
        "k_roll": stiffness.roll,
        "k_push": stiffness.push,
        "k_vert": stiffness.vertical,
        "corner_flex": stiffness.corner_flex,
        "k_sway_pdelta": stiffness.sway_pdelta,
        "k_twist_pdelta": stiffness.twist_pdelta,
        "lambda_cr": stiffness.lambda,
    })
}

fn movement(movement: &Movement) -> Value {
    json!({
        "arms": movement.arms,
        "joints": movement.joints,
        "wheels": movement.wheels,
        "screw": movement.screw,
        "top_rails": movement.top_rails,
        "base_rails": movement.base_rails,
        "casters": movement.casters,
        "total": movement.total(),
        "play": movement.play,
        "lash": movement.lash,
    })
}
