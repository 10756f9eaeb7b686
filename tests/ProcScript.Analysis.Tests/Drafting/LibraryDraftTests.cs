using ProcScript.Analysis.Drafting;
using ProcScript.Model;
using ProcScript.Model.Sources;
using static ProcScript.Analysis.Tests.Drafting.Drafting;

namespace ProcScript.Analysis.Tests.Drafting;

public sealed class LibraryDraftTests
{
    [Fact]
    public void A_strip_makes_its_machine()
    {
        var drafted = Drafted(
            """
            procedure motor_new "Replace the motor" on fan {
              goal replace motor
              stage "Make safe" { isolate mains  empty oil }
              stage "Guard" { undo 6 m5x12 guard_bolts  release guard_clips  remove guard }
              stage "Motor" {
                unplug motor_plug
                disconnect oil_line
                undo 2 m8 motor_bolts { tool socket_13 }
                cut motor_tie
                remove motor
              }
              work { replace motor }
              refit { check "It runs." needs mains live }
            }

            """);

        Assert.Equal(
            """
            fastener m5x12 "M5 × 12 bolt" { thread M5x0.8  length 12 mm }
            clip guard_clip "guard clip"  // draft: what is the guard clip, and how does it come off?
            connector motor_plug "motor plug"  // draft: what is the motor plug, and how is it released?
            line oil_line "oil line"  // draft: what is the oil line, which tool opens it, and which seals are new each time?
            fastener m8 "M8 bolt" { thread M8x1.25 }
            bond motor_tie "motor tie"  // draft: what is the motor tie, what is it opened with, and what closes it again?
            tool socket_13 "13 mm socket" { size 13 mm }

            machine fan "Fan" {
              energy mains "mains" {
                // draft: how is the mains isolated, locked off and proved to be off, and what can it do to people?
                isolate "Isolate the mains."
                restore "Restore the mains."
              }

              fluid oil "oil" {
                // draft: how much oil belongs in, and how far off is still right?
                empty "Drain the oil."
                fill "Fill in the oil."
              }

              part guard "guard" {
                held by 6 m5x12 as guard_bolts
                // draft: how many guard clips?
                held by 1 guard_clip as guard_clips
              }

              part motor "motor" {
                behind guard  // draft: is the motor behind the guard?
                wired by 1 motor_plug as motor_plug on mains  // draft: is the motor plug on the mains?
                piped by 1 oil_line as oil_line carries oil  // draft: does the oil line carry the oil?
                held by 2 m8 as motor_bolts
                held by 1 motor_tie as motor_tie
              }
            }

            procedure motor_new "Replace the motor" on fan {
              goal replace motor
              stage "Make safe" { isolate mains  empty oil }
              stage "Guard" { undo guard_bolts  release guard_clips  remove guard }
              stage "Motor" {
                unplug motor_plug
                disconnect oil_line
                undo motor_bolts { tool socket_13 }
                cut motor_tie
                remove motor
              }
              work { replace motor }
              refit { check "It runs." needs mains live }
            }

            """,
            drafted);
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void What_the_machine_has_stays_and_new_joints_go_into_its_parts()
    {
        var drafted = Drafted(
            """
            clip pin "push pin" { release "Lift the head." }
            machine cab "Cab" {
              part trim "trim" { held by 2 pin as trim_pins }
              part lamp "lamp"
            }
            procedure lamp_out "Take the lamp out" on cab {
              goal remove lamp
              stage "Trim" { release trim_pins  undo 1 m4 trim_screw  remove trim }
              stage "Lamp" { release 3 pin lamp_pins  remove lamp }
            }

            """);

        Assert.Contains("  part trim \"trim\" {\n    held by 2 pin as trim_pins\n    held by 1 m4 as trim_screw\n  }\n", drafted, StringComparison.Ordinal);
        Assert.Contains("  part lamp \"lamp\" {\n    held by 3 pin as lamp_pins\n  }\n", drafted, StringComparison.Ordinal);
        Assert.Contains("fastener m4 \"M4 screw\" { thread M4x0.7 }\n", drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void What_is_opened_right_before_a_joint_may_cover_or_lock_it()
    {
        var drafted = Drafted(
            """
            procedure seat_out "Take the seat out" on cab {
              goal remove seat
              stage "Seat" {
                release 4 snap_cap seat_caps
                undo 4 m10x30 seat_bolts
                release heater_plug_lock
                unplug heater_plug
                release hub_split_pin
                undo 1 m12 hub_nut
                remove seat
              }
              stage "Console" {
                remove flap
                undo 2 m5 console_screws
                remove console
              }
            }

            """);

        Assert.Contains("held by 4 m10x30 as seat_bolts {\n      covered by 4 snap_cap as seat_caps  // draft: do the seat caps only cover the seat bolts?\n    }\n", drafted, StringComparison.Ordinal);
        Assert.Contains("locked by 1 heater_plug_lock as heater_plug_lock { reuse because \"It stays on, and slides back.\" }  // draft: does the heater plug lock lock the heater plug", drafted, StringComparison.Ordinal);
        Assert.Contains("locked by 1 hub_split_pin as hub_split_pin  // draft: does the hub split pin lock the hub nut", drafted, StringComparison.Ordinal);
        Assert.Contains("held by 2 m5 as console_screws {\n      behind flap  // draft: are the console screws behind the flap, or the whole console?\n    }\n", drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void What_another_procedure_opens_without_its_caps_has_none()
    {
        var drafted = Drafted(
            """
            procedure seat_out "Take the seat out" on cab {
              goal remove seat
              stage "Seat" { release 4 snap_cap seat_caps  undo 4 m10x30 seat_bolts  remove seat }
            }

            procedure seat_loose "Loosen the seat" on cab {
              stage "Seat" { loosen seat_bolts }
            }

            """);

        Assert.DoesNotContain("covered by", drafted, StringComparison.Ordinal);
        Assert.Contains("held by 4 snap_cap as seat_caps", drafted, StringComparison.Ordinal);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void What_another_procedure_contradicts_is_not_guessed()
    {
        const string both = """
            procedure wheel_off "Take the wheel off" on fan {
              goal remove wheel
              stage "All" { remove guard  undo 1 m6 hub_nut  remove wheel }
            }

            """;
        const string other = """
            procedure wheel_alone "Take the wheel off through the hatch" on fan {
              goal remove wheel
              stage "All" { undo hub_nut  remove wheel }
            }

            """;

        Assert.Contains("behind guard", Drafted(both), StringComparison.Ordinal);
        var drafted = Drafted(both + "\n" + other);
        Assert.DoesNotContain("behind guard", drafted, StringComparison.Ordinal);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void Controls_props_ways_aside_and_temporary_parts_are_told_from_their_verbs()
    {
        var drafted = Drafted(
            """
            procedure ram_out "Take the ram out" on press {
              goal remove ram
              stage "Ram" {
                set lever to down
                loosen 2 m8 table_bolts
                aside table
                fit eye
                fasten 1 m10 eye_bolt
                support ram
                undo 4 m12 ram_bolts
                remove ram { needs eye fitted }
              }
              refit { check "It stands." before set lever to home }
            }

            """);

        Assert.Contains("  control lever \"lever\" {\n", drafted, StringComparison.Ordinal);
        Assert.Contains("    down, home\n", drafted, StringComparison.Ordinal);
        Assert.Contains("aside \"Move the table aside.\" needs table_bolts\n", drafted, StringComparison.Ordinal);
        Assert.Contains("    temporary\n    held by 1 m10 as eye_bolt\n", drafted, StringComparison.Ordinal);
        Assert.Contains("held by 4 m12 as ram_bolts\n", drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
    }

    [Fact]
    public void Loops_and_parameters_are_rolled_out()
    {
        var drafted = Drafted(
            """
            procedure doors_off(end in front, rear) "Take the doors off" on cab {
              goal remove door[left, end]
              stage "Doors" { each side in left, right { undo 2 m6 door_bolts[side, end]  remove door[side, end] } }
            }

            """);

        Assert.Equal(
            ["door[left, front]", "door[right, front]", "door[left, rear]", "door[right, rear]"],
            drafted.Split('\n').Where(line => line.StartsWith("  part ", StringComparison.Ordinal)).Select(line => line["  part ".Length..(line.IndexOf(']', StringComparison.Ordinal) + 1)]));
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Theory]
    [InlineData("tool", "`m6` is declared already, and it is no kind")]
    [InlineData("supply", "`m6` is declared already, and it is no kind")]
    public void A_name_that_is_taken_is_told_and_nothing_is_written(string keyword, string because)
    {
        var report = LibraryDraft.Of(
            Bound($"{keyword} m6 \"taken\"\nprocedure lid_off on tank {{ stage \"Lid\" {{ undo 4 m6 lid_bolts  remove lid }} }}\n"), new DraftRequest());

        Assert.Empty(report.Files);
        Assert.StartsWith(because, Assert.Single(report.Troubles).Because, StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_in_the_text_are_left_to_their_author()
    {
        var report = LibraryDraft.Of(Bound("procedure lid_off on tank { stage \"Lid\" { remove } }\n"), new DraftRequest());

        Assert.Empty(report.Files);
        Assert.Equal("its text has errors: fix these first", Assert.Single(report.Troubles).Because);
    }

    [Fact]
    public void A_kind_of_another_file_is_used_and_the_file_of_the_machine_has_to_be_given()
    {
        var library = LibraryBinder.Bind(
            new MemorySourceStore(
            [
                KeyValuePair.Create("catalog/bolts.proc", "fastener m6 \"M6 bolt\"\n"),
                KeyValuePair.Create("tank/tank.proc", "machine tank \"Tank\" { }\n"),
                KeyValuePair.Create("tank/lid.proc", "use \"tank.proc\"\n\nprocedure lid_off on tank { stage \"Lid\" { undo 4 m6 lid_bolts  remove lid } }\n"),
            ]),
            TestContext.Current.CancellationToken);

        var whole = LibraryDraft.Of(library, new DraftRequest());
        var part = LibraryDraft.Of(library, new DraftRequest { MayChange = path => path == "tank/lid.proc" });

        Assert.Equal(["tank/lid.proc", "tank/tank.proc"], whole.Files.Select(file => file.Path));
        Assert.StartsWith("use \"../catalog/bolts.proc\"\n\nmachine tank", whole.Files[1].After, StringComparison.Ordinal);
        Assert.Empty(part.Files);
        Assert.Contains("its file `tank/tank.proc` was not given", Assert.Single(part.Troubles).Because, StringComparison.Ordinal);
    }
}
