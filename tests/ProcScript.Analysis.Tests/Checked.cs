using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests;

/// <summary>A text that has been checked, and short words for what came of it.</summary>
internal sealed class Checked
{
    private Checked(LibraryReport report) => Report = report;

    public LibraryReport Report { get; }

    /// <summary>The findings as <c>code message</c>, in order.</summary>
    public IEnumerable<string> Findings => Report.Findings.Select(found => $"{found.Finding.Rule.Code} {found.Finding.Message}");

    public IEnumerable<string> Codes => Report.Findings.Select(found => found.Finding.Rule.Code);

    /// <summary>The only procedure.</summary>
    public ProcedureReport Only => Assert.Single(Report.Procedures);

    public Finding OnlyFinding => Assert.Single(Report.Findings).Finding;

    public static Checked Text(string text) => Files(("x.proc", text));

    /// <summary>A text that no author wrote: what is not said in it is not the matter.</summary>
    public static Checked Unasked(string text) =>
        Files(("x.proc", text), ("procscript.json", """{ "severities": { "PRC6xxx": "off", "PRC8xxx": "off" } }"""));

    public static Checked Files(params (string Path, string Text)[] files) => new(LibraryCheck.Run(
        new MemorySourceStore(files.Select(file => KeyValuePair.Create(file.Path, file.Text))),
        TestContext.Current.CancellationToken));

    /// <summary>A procedure of one stage on a machine with this body.</summary>
    public static Checked Stage(string machine, string steps, string rest = "") => Text(
        $$"""
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip pin "pin"
        clip cap "cap"
        connector plug_2 "plug"
        line hose "hose" { tool key }
        bond glue "glue" { tool key }
        machine m "M" {
        {{machine}}
        }
        procedure p "P" on m {
          stage "S" {
        {{steps}}
          }
        {{rest}}
        }
        """);

    public ProcedureReport Procedure(string job) => Report.Procedures.Single(report => report.Procedure.Job == job);

    /// <summary>The strip of the only procedure, as it is written: <c>undo seat_bolts</c>.</summary>
    public IEnumerable<string> Strip => Lines(Only.Outcome.Strip!.Actions);

    /// <summary>The refit of the only procedure, which must be proven.</summary>
    public IEnumerable<string> Refit
    {
        get
        {
            Assert.Empty(Findings);
            Assert.True(Only.IsProven);
            return Lines(Only.Outcome.Refit!.Actions);
        }
    }

    public static IEnumerable<string> Lines(IEnumerable<PerformedAction> actions) => actions.Select(Line);

    public static string Line(PerformedAction action)
    {
        var verb = action.Verb.ToString().ToLowerInvariant();
        return action switch
        {
            { Origin: RuledCheck check } => $"check {check.Rule.Text}",
            { Target: null, Origin: WrittenStep written } => $"{verb} {written.Step.Text}",
            { Target: null, Origin: TestStep { Step: { } step } } => $"{verb} {step.Text}",
            { Target: Joint joint } when action.Count > 0 && action.Count != joint.Count => $"{verb} {action.Count} of {joint.Name}",
            { Target: Control control } => $"{verb} {control.Name} to {control.Positions[action.PositionAfter]}",
            _ => $"{verb} {action.Target!.Name}",
        };
    }

    /// <summary>The text at a place, with its line from 1.</summary>
    public string At(SourceSpan place)
    {
        var text = Report.Library.Trees[place.Path].Text;
        return $"{text.LineAt(place.Span.Start) + 1}: {text.Slice(place.Span)}";
    }
}
