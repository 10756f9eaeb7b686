namespace ProcScript.Analysis.Tests;

/// <summary>The example that the language is explained with: a cab, a seat procedure, and the evaporator that calls it.</summary>
internal static class WorkedExample
{
    public const string Catalog = """
        tool socket_13 "13 mm socket"
        tool socket_16 "16 mm socket"
        tool ext_600 "600 mm extension"
        tool trim_lever "plastic trim lever"
        tool flow_cup "measuring cup"
        fastener m8x25 "M8 × 25 flange bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
        fastener m10x30 "M10 × 30 bolt" { thread M10x1.5  length 30 mm  grade 8.8  drive socket_16  torque 44 ± 4 N.m }
        clip snap_cap "snap-on bolt cap" { tool trim_lever }
        clip push_pin "push-in panel clip" { tool trim_lever  spare 10 % }
        clip turn_lock "quarter-turn retainer"
        connector two_way "2-way connector" { release "Press the tab, pull the body, never the wires." }
        line ac_union "bolted A/C union" { release "Turn the nut back by hand."  seals 2 oring_10 }
        supply oring_10 "10.8 mm HNBR O-ring" { single use }
        """;

    public const string Cab = """
        use "metric.proc"

        machine ketterby_t40 "Ketterby T40 tractor, cab" {
          energy battery "12 V battery" {
            isolate "Take the negative cable off its post. Cover the post."
            verify "The dome lamp stays dark."
            restore "Refit the negative cable."
          }
          fluid refrigerant "refrigerant R-134a" {
            hazard refrigerant
            charge 0.85 ± 0.02 kg
            with evaporator add 20 g
            empty "Recover with a certified machine. Write down what came out."
            fill  "Evacuate, then charge by weight."
            takes 18 min  attended 3 min
          }
          part harness "cab harness"
          part seat "operator seat" {
            mass 30 kg
            held by 4 m10x30 as seat_bolts {
              covered by 4 snap_cap as seat_caps
            }
            wired by 1 two_way as seat_switch { to harness  on battery  behind seat }
            aside "Tilt the seat rearwards." needs seat_bolts
          }
          part roof "roof panel" {
            mass 14 kg
            held by 8 m8x25 as roof_bolts
            part beacon "beacon" { wired by 1 two_way as beacon_plug { to harness  on battery } }
          }
          each side in left, right {
            part pillar_trim[side] "{side} pillar trim" {
              held by 3 turn_lock as pillar_clips[side]
              when side is left { held by 1 m8x25 as grab_bolt covered by 1 snap_cap as grab_cap }
            }
          }
          part headliner "headliner" {
            behind seat, pillar_trim[left], pillar_trim[right]
            held by 10 push_pin as liner_clips
            wired by 1 two_way as dome_plug { to harness  on battery  behind headliner }
            aside "Lower the rear edge." needs liner_clips
          }
          part evaporator "evaporator" {
            behind headliner, roof
            held by 4 m8x25 as evap_bolts
            piped by 2 ac_union as evap_unions carries refrigerant
          }
        }
        """;

    public const string Evaporator = """
        use "cab.proc"

        procedure seat_out "Take the operator seat out" on ketterby_t40 {
          stage "Seat" {
            release seat_caps
            undo seat_bolts { tool ext_600 }
            aside seat { people 2 }
            unplug seat_switch
            remove seat { people 2  store "bench, on its back" }
          }
        }

        procedure replace_evaporator "Replace the roof evaporator" on ketterby_t40 {
          goal replace evaporator

          stage "Make safe" {
            empty refrigerant in background
            isolate battery
          }
          do seat_out
          stage "Trim and headliner" {
            each side in left, right {
              when side is left { release grab_cap  undo grab_bolt }
              release pillar_clips[side]
              remove pillar_trim[side]
            }
            release liner_clips
            aside headliner
            unplug dome_plug
            remove headliner
          }
          stage "Roof" {
            unplug beacon_plug
            undo roof_bolts
            remove roof { people 2 }
          }
          stage "Evaporator" {
            disconnect evap_unions
            undo evap_bolts
            remove evaporator
          }
          work {
            replace evaporator
            measure "drain tube flow" with flow_cup expect 0.5 .. 2.0 L/min
          }
          refit {
            fit pillar_trim[left] after fit seat
            check "Pour 0.2 L of water in the pan: both drain tubes run." before fit headliner
          }
        }
        """;

    /// <summary>The example, with an edit of the evaporator's procedures.</summary>
    public static Checked Check(Func<string, string>? edit = null) => Checked.Files(
        ("metric.proc", Catalog),
        ("cab.proc", Cab),
        ("evaporator.proc", edit is null ? Evaporator : edit(Evaporator)),
        // What the example does not say is not the matter here.
        ("procscript.json", """{ "severities": { "PRC6xxx": "off", "PRC8xxx": "off" } }"""));
}
