namespace ProcScript.Analysis.Tests.Plans;

/// <summary>A small library in which most of what a plan says occurs.</summary>
internal static class SampleText
{
    public const string Catalog = """
        tool socket_13 "13 mm socket" { size 13 mm }
        tool bar "breaker bar" { size 600 mm }
        tool lever "trim lever"
        supply seal_ring "seal ring" { single use }
        supply oil "gear oil"
        fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  drive socket_13  torque 22 ± 2 N.m }
        fastener m8x60 "M8 × 60 bolt" { thread M8x1.25  drive socket_13  torque 24 ± 2 N.m }
        fastener stretch "stretch bolt" { thread M10x1.5  drive socket_13  torque 40 N.m  single use }
        clip pin "push-in clip" { tool lever  spare 15 %  release "Pull straight."  engage "Push until it clicks." }
        clip hook "moulded hook" { captive }
        clip cap "bolt cap" { ppe "eye protection" }
        connector two_way "2-way connector"
        line union "union" { seals 2 seal_ring  uses 5 mL of oil  torque 18 N.m }
        bond tape "taped wrap" { uses 0.6 m of cloth }
        bond tie "cable tie"
        supply cloth "cloth tape"

        """;

    public const string Machine = """
        machine gearbox "Gearbox G1" {
          option shield "heat shield"
          energy mains "230 V mains" {
            danger  "Mains voltage kills."
            isolate "Pull the plug."
            wait    30 s
            verify  "Measure at the terminals." expect < 1 V
            restore "Put the plug in."
          }
          energy air "shop air" { isolate "Close the cock."  restore "Open the cock." }
          fluid gear_oil "gear oil" { charge 2.0 ± 0.1 L  takes 10 min  attended 1 min  empty "Open the drain."  fill "Fill to the mark." }
          control lever_1 "shift lever" { neutral, first_gear }

          part guard "guard" {
            mass 12 kg
            held by 4 m8x25 as guard_bolts { at "front face"  covered by 4 cap as guard_caps }
            aside "Swing it left." needs guard_bolts
          }
          part case "case" {
            mass 30 kg
            behind guard
            caution "Sharp edges."
            held by 6 m8x25 as case_bolts
            held by 2 m8x60 as long_bolts
            held by 10 pin as case_pins
            held by 1 hook as case_hook
            held by 3 stretch as end_bolts
            held by 1 tape as case_tape
            held by 2 tie as case_ties
            wired by 1 two_way as case_plug { on mains }
            piped by 2 union as case_pipes { carries gear_oil }
            part motor "motor" { mass 8 kg  held by 4 m8x25 as motor_bolts }
            part fan "fan" { mass 1 kg  held by 2 m8x25 as fan_bolts }
          }
        }

        """;

    public const string Procedure = """
        procedure case_out "Take the case out" on gearbox {
          goal replace case
          ppe "safety shoes"
          tool bar
          warning "Two people for the lift."
          stage "Make safe" {
            empty gear_oil in background
            set lever_1 to first_gear
            isolate mains
            isolate air
          }
          stage "Guard" {
            release guard_caps
            notice "Paint chips."
            undo guard_bolts { photo "Washers under the two left bolts" }
            aside guard { danger "It swings back." }
          }
          stage "Motor" {
            undo 3 of motor_bolts
            undo rest of motor_bolts
            remove motor { store "bench" }
          }
          stage "Case" {
            unplug case_plug
            disconnect case_pipes { refit { check "Both unions dry." } }
            cut case_tape
            cut case_ties
            release case_pins { how "Front first."  refit { how "Rear first." } }
            release case_hook
            undo case_bolts { tool lever }
            undo long_bolts { time 5 min }
            undo end_bolts
            remove case { people 2 }
          }
          work {
            replace case { uses 20 mL of oil }
            clean motor in background { time 10 min }
            measure "Oil flow" expect 0.5 .. 2.0 L/min
            task "Write down the serial number."
          }
          refit {
            check "The lever moves freely." before restore mains
            check "No drip." expect <= 1 mL needs mains live
          }
        }
        """;

    public static readonly string All = Catalog + Machine + Procedure;
}
