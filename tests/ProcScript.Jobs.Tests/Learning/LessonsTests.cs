using ProcScript.Analysis;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Learning;
using static ProcScript.Jobs.Tests.Learning.Shop;

namespace ProcScript.Jobs.Tests.Learning;

/// <summary>What jobs teach a library: where it is written, and where not.</summary>
public sealed class LessonsTests
{
    private static readonly Shop Plain = new(Tank);
    private static readonly JobCourse Pump = Plain.Course("pump_out");
    private static readonly JobCourse Feet = Plain.Course("feet_out");

    [Fact]
    public void A_step_takes_what_its_card_says_less_what_cures_by_itself()
    {
        var steps = DemoJobs.All.SelectMany(report => JobCourse.Of(report)!.Steps).Where(step => !step.Line.InBackground && step.Line.Verb != "pause").ToList();

        Assert.All(steps, step => Assert.Equal(step.Line.Seconds - (step.Line.Cure?.Seconds ?? 0), step.Duration.Seconds, 1e-6));
        Assert.All(steps, step => Assert.Equal(step.Line.IsUsualTime, step.Duration.Carrier == TimeCarrier.None));
        Assert.Equal(Enum.GetValues<TimeCarrier>(), steps.Select(step => step.Duration.Carrier).Distinct().Order());
    }

    [Fact]
    public void A_usual_time_is_replaced_at_the_action_one_for_each_way()
    {
        var report = Plain.Learn(Jobs(3, Pump, step => step.Line.Item == "lid_bolts" ? (step.Phase == CoursePhase.Strip ? 100 : 150) : step.Duration.Seconds));

        // The strip's first step is nobody's measure; the refit's is.
        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal(("time", "time 2.5 min", true, 3), (only.Sort, only.Write, only.OfRefit, only.Seconds!.Jobs));
        Assert.Contains("undo lid_bolts { refit { time 2.5 min } }", Plain.After(report).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_of_a_kind_is_for_one_piece_and_pooled_over_procedures_and_both_ways()
    {
        double Seconds(CourseStep step) => step.Line.Verb is "release" or "engage" ? 8 * step.Count : step.Duration.Seconds;
        var report = Plain.Learn([.. Jobs(2, Pump, Seconds), .. Jobs(2, Feet, Seconds)]);

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal(("push pin", "3 s each", "time 8 s", 4), (only.About, only.Written, only.Write, only.Seconds!.Jobs));
        Assert.Contains("clip pin \"push pin\" { tool socket_13  spare 10 %  time 8 s }", Plain.After(report).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_steps_of_a_kind_are_unlike_each_is_written_at_its_own_action()
    {
        var report = Plain.Learn(Jobs(3, Pump, step => step.Line.Verb switch { "release" => 60, "engage" => 9, _ => step.Duration.Seconds }));

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal(("time 1 min", "9 s, by its kind"), (only.Write, only.Written));
        Assert.Contains("release pump_pins { time 1 min }", Plain.After(report).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void One_line_for_unlike_steps_is_told_and_left()
    {
        var report = Plain.Learn(Jobs(3, Feet, step => step.Line switch { { Verb: "release", Item: "foot_pins[left]" } => 100, { Verb: "release" } => 10, _ => step.Duration.Seconds }));

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Contains("write them apart", only.ByHand, StringComparison.Ordinal);
        Assert.Equal("10 s at foot_pins[right] in 3 jobs; 1 min 40 s at foot_pins[left] in 3 jobs", only.Observed);
        Assert.Empty(report.Fixes);
    }

    [Fact]
    public void What_strip_puts_in_has_its_time_at_the_item()
    {
        var report = Plain.Learn(Jobs(3, Feet, step => step.Line.Item == "lid_bolts" ? 80 : step.Duration.Seconds));

        Assert.Equal("time 20 s", Assert.Single(report.Document.Suggestions).Write);
        Assert.Contains("held by 4 m8 as lid_bolts { time 20 s  pattern none }", Plain.After(report).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_that_strip_takes_off_has_no_one_time_and_is_told_by_hand()
    {
        var shop = new Shop(Tank.Replace("stage \"Lid\" { strip lid }", "stage \"Pump\" { strip pump }", StringComparison.Ordinal));
        var report = shop.Learn(Jobs(3, shop.Course("feet_out"), step => step.Line is { Verb: "remove", Item: "lid" } ? 95 : step.Duration.Seconds));

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal(("lid", "30 s, a usual time", ""), (only.About.Split(' ')[^1], only.Written, only.Write));
        Assert.Contains("write it as a step, with `time 100 s`", only.ByHand, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_jobs_are_not_enough_and_one_that_went_badly_moves_nothing()
    {
        double Slow(CourseStep step) => step.Phase == CoursePhase.Refit ? 10 * step.Duration.Seconds : step.Duration.Seconds;

        Assert.Empty(Plain.Learn(Jobs(2, Pump, Slow)).Document.Suggestions);
        Assert.NotEmpty(Plain.Learn(Jobs(2, Pump, Slow), atLeast: 2).Document.Suggestions);
        Assert.Empty(Plain.Learn([.. Jobs(5, Pump, step => step.Duration.Seconds), Job("bad", Pump, All(Pump, Slow))]).Document.Suggestions);
    }

    [Theory]
    [InlineData(1, "spare 35 %", "3 broke of 9 pieces, in 3 of 3 jobs")]
    [InlineData(3, "single use", "9 broke of 9 pieces, in 3 of 3 jobs; 3 jobs needed more than the order list had")]
    public void What_breaks_is_at_hand_or_new_each_time(int broke, string write, string observed)
    {
        var report = Plain.Learn(JobsWith(3, Event(EventKind.Broke) with { Item = "pump_pins", Count = broke }));

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal(("spare", write, observed), (only.Sort, only.Write, only.Observed));
        Assert.Empty(Plain.After(report).Learn(JobsWith(3, Event(EventKind.Broke) with { Item = "pump_pins", Count = broke })).Document.Suggestions);
    }

    [Fact]
    public void Spares_that_nobody_needs_become_fewer()
    {
        var report = Plain.Learn(Jobs(40, Pump, step => step.Duration.Seconds));

        Assert.Equal(("spare 10 %", "spare 4 %"), Assert.Single(report.Document.Suggestions) is var only ? (only.Written, only.Write) : default);
    }

    [Fact]
    public void A_part_that_breaks_each_time_would_have_to_be_replaced_and_is_told_with_the_reason()
    {
        var report = Plain.Learn(JobsWith(3, Event(EventKind.Broke) with { Item = "lid" }));

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal("single use", only.Write);
        Assert.Contains("It is not written: it would bring an error, PRC4005", only.ByHand, StringComparison.Ordinal);
        Assert.Empty(report.Texts.Files);
    }

    [Fact]
    public void A_tool_goes_to_the_step_that_missed_it_by_its_name_or_its_title()
    {
        var report = Plain.Learn([.. JobsWith(2, Event(EventKind.Missing) with { Tool = "Step stool", Step = 2 }), .. JobsWith(1, Event(EventKind.Missing) with { Tool = "step_stool", Step = 2 }, "x")]);

        Assert.Equal("tool step_stool", Assert.Single(report.Document.Suggestions).Write);
        Assert.Contains("remove lid { tool step_stool  people 2 }", Plain.After(report).Text, StringComparison.Ordinal);
        Assert.Empty(Plain.After(report).Learn(JobsWith(3, Event(EventKind.Missing) with { Tool = "step_stool", Step = 2 })).Document.Suggestions);
    }

    [Fact]
    public void A_tool_of_the_way_back_leaves_there_what_the_action_names_for_both_ways()
    {
        var shop = new Shop(Tank.Replace("    undo lid_bolts\n", "    undo lid_bolts { tool socket_13 }\n", StringComparison.Ordinal));
        var course = shop.Course("pump_out");
        var back = course.Steps.Single(step => step is { Phase: CoursePhase.Refit, Line.Item: "lid_bolts" });
        var report = shop.Learn([.. Enumerable.Range(0, 3).Select(i => Job($"job {i}", course, [(1, Event(EventKind.Missing) with { Tool = "step_stool", Step = back.Number })]))]);

        Assert.Contains("undo lid_bolts { tool socket_13  refit { tool socket_13, step_stool } }", shop.After(report).Text, StringComparison.Ordinal);
        Assert.Equal(["socket_13", "step_stool"], shop.After(report).Course("pump_out").Step(back.Number)!.OwnTools);
    }

    [Fact]
    public void A_tool_with_a_longer_name_is_another_tool()
    {
        var shop = new Shop(Tank.Replace("tool step_stool", "tool socket_13_long \"13 mm socket, long\"\ntool step_stool", StringComparison.Ordinal).Replace("undo lid_bolts\n", "undo lid_bolts { tool socket_13_long }\n", StringComparison.Ordinal)
            .Replace("drive socket_13  torque", "torque", StringComparison.Ordinal));
        var course = shop.Course("pump_out");

        Assert.Equal("tool socket_13_long, socket_13", Assert.Single(Missing("13 mm socket").Document.Suggestions).Write);
        Assert.Empty(Missing("13 mm socket, long").Document.Suggestions);

        LearnReport Missing(string tool) => shop.Learn([.. Enumerable.Range(0, 3).Select(i => Job($"job {i}", course, [(1, Event(EventKind.Missing) with { Tool = tool, Step = 1 })]))]);
    }

    [Fact]
    public void What_strip_puts_in_is_told_of_and_left()
    {
        var lid = Feet.Steps.First(step => step.Line.Item == "lid_bolts").Number;
        var report = Plain.Learn([.. Enumerable.Range(0, 3).Select(i => Job($"job {i}", Feet, [(1, Event(EventKind.Missing) with { Tool = "step_stool", Step = lid }), (1, Event(EventKind.Note) with { Text = "the rim is sharp", Step = lid + 1 })]))]);

        Assert.Equal(2, report.Document.Suggestions.Length);
        Assert.All(report.Document.Suggestions, one => Assert.StartsWith("No line of the text is this step's alone: write `", one.ByHand, StringComparison.Ordinal));
    }

    [Fact]
    public void A_tool_of_no_step_goes_to_the_job_and_one_that_nobody_declared_is_told()
    {
        var job = Plain.Learn(JobsWith(3, Event(EventKind.Missing) with { Tool = "step_stool" }));
        var unknown = Plain.Learn(JobsWith(3, Event(EventKind.Missing) with { Tool = "work lamp", Step = 2 }));

        Assert.Contains("  goal remove pump\n  tool step_stool\n", Plain.After(job).Text, StringComparison.Ordinal);
        Assert.Empty(Plain.After(job).Learn(JobsWith(3, Event(EventKind.Missing) with { Tool = "step_stool" })).Document.Suggestions);
        Assert.Contains("`tool … \"work lamp\"`", Assert.Single(unknown.Document.Suggestions).ByHand, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("contact cleaner", "", "uses 2 of cleaner")]
    [InlineData("push pin", "The catalog has it for joints, `pin`", "")]
    [InlineData("rag", "`supply … \"rag\"`", "")]
    public void What_else_was_needed_goes_on_the_list_of_the_job(string what, string byHand, string write)
    {
        var report = Plain.Learn(JobsWith(3, Event(EventKind.Missing) with { Text = what, Count = 2 }));

        var only = Assert.Single(report.Document.Suggestions);
        Assert.Equal(("supply", write), (only.Sort, only.Write));
        Assert.Contains(byHand, only.ByHand, StringComparison.Ordinal);
        Assert.Equal(byHand.Length == 0, only.ByHand.Length == 0);
    }

    [Fact]
    public void A_note_that_comes_up_again_is_written_at_its_step_whatever_it_holds()
    {
        const string note = "the \"blue\" loom {left} sits behind the rim \\ wall";
        var report = Plain.Learn(JobsWith(3, Event(EventKind.Note) with { Text = note, Step = 2 }));
        var after = Plain.After(report);

        Assert.Empty(Assert.Single(report.Document.Suggestions).ByHand);
        Assert.Equal("The \"blue\" loom {left} sits behind the rim \\ wall.", Assert.Single(after.Course("pump_out").Step(2)!.Line.How));
        Assert.Empty(after.Learn(JobsWith(3, Event(EventKind.Note) with { Text = note, Step = 2 })).Document.Suggestions);
    }

    [Fact]
    public void Notes_of_no_step_are_told_and_two_alike_in_one_job_are_one_job()
    {
        var told = Plain.Learn(JobsWith(3, Event(EventKind.Note) with { Text = "the lid is warped" }));
        var (once, twice) = ((1.0, Event(EventKind.Note) with { Text = "the lid is warped", Step = 2 }), (1.0, Event(EventKind.Note) with { Text = "lid is warped the", Step = 2 }));
        var few = Plain.Learn([.. Enumerable.Range(0, 2).Select(i => Job($"job {i}", Pump, [.. All(Pump, step => step.Duration.Seconds), once, twice]))]);

        Assert.Contains("belong to no step", Assert.Single(told.Document.Suggestions).ByHand, StringComparison.Ordinal);
        Assert.Empty(few.Document.Suggestions);
    }

    [Fact]
    public void What_the_texts_no_longer_have_is_told_and_left()
    {
        var newer = new Shop(Tank.Replace("    unplug pump_plug\n", "    strip pump_plug_is_gone\n", StringComparison.Ordinal).Replace("    strip pump_plug_is_gone\n", "", StringComparison.Ordinal)
            .Replace("  wired by 1 two as pump_plug", "", StringComparison.Ordinal));
        var report = newer.Learn(Jobs(3, Pump, step => 5 * step.Duration.Seconds));

        Assert.Contains("pump_out: pump_plug (3 jobs)", report.Document.Gone);
        Assert.Contains("pump_out: Unplug 1 × 2-way plug (3 jobs)", report.Document.Gone);
        Assert.DoesNotContain(report.Document.Suggestions, one => one.About.Contains("plug", StringComparison.Ordinal));
    }

    [Fact]
    public void Jobs_of_another_library_or_of_what_is_not_proven_are_left_out_with_the_reason()
    {
        var jobs = Jobs(3, Pump, step => 5 * step.Duration.Seconds);
        var broken = new Shop(Tank.Replace("    undo lid_bolts\n    remove lid", "    remove lid", StringComparison.Ordinal)).Learn(jobs);
        var other = new Shop(Tank.Replace("pump_out", "pump_new", StringComparison.Ordinal)).Learn(jobs);

        Assert.Equal((3, true), (broken.Document.LeftOut.Length, broken.Document.LeftOut.All(why => why.EndsWith("pump_out is not proven as it stands: see 'procscript check'", StringComparison.Ordinal))));
        Assert.All(other.Document.LeftOut, why => Assert.EndsWith("this library has no procedure pump_out", why, StringComparison.Ordinal));
    }

    [Fact]
    public void A_job_of_a_variant_is_held_against_that_variant()
    {
        var shop = new Shop(Tank.Replace("machine tank \"water tank\" {\n", "machine tank \"water tank\" {\n  option rail \"rail\"\n  when rail { part bar \"bar\" { mass 1 kg } }\n", StringComparison.Ordinal)
            .Replace("    remove lid { people 2 }\n", "    remove lid { people 2 }\n    when rail { remove bar }\n", StringComparison.Ordinal));
        var report = LibraryCheck.Run(shop.Store, TestContext.Current.CancellationToken).Procedures.Single(one => one.Procedure.Job == "pump_out" && !one.Options.IsEmpty);
        var course = JobCourse.Of(report)!;
        var jobs = Jobs(3, course, step => step.Line.Item == "bar" ? 300 : step.Duration.Seconds).ToList();

        Assert.Equal(["time 5 min", "time 5 min"], shop.Learn(jobs).Document.Suggestions.Select(one => one.Write));
        Assert.All(Plain.Learn(jobs).Document.LeftOut, why => Assert.EndsWith("pump_out is for no machine with rail any more", why, StringComparison.Ordinal));
    }

    private static IEnumerable<SeenJob> Jobs(int count, JobCourse course, Func<CourseStep, double> seconds) =>
        [.. Enumerable.Range(0, count).Select(i => Job($"{course.Plan.Job} {i:00}", course, All(course, seconds)))];

    /// <summary>Jobs that went by the plan, with something told at their end.</summary>
    private static IEnumerable<SeenJob> JobsWith(int count, JobEvent told, string name = "") =>
        [.. Enumerable.Range(0, count).Select(i => Job($"job {name}{i}", Pump, [.. All(Pump, step => step.Duration.Seconds), (1, told)]))];
}
