using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.Messages;
using ProcScript.Cards.Labels;
using ProcScript.Cards.Templating;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Stores;
using ProcScript.Model.Machines;
using Scriban.Runtime;

namespace ProcScript.Cards.Records;

/// <summary>Labels for the bags and the parts of one job, each with a code that leads to it.</summary>
public static class JobLabelPage
{
    private const string Style = "job-labels.css";

    /// <summary>The labels as one HTML file.</summary>
    /// <param name="job">The job.</param>
    /// <param name="address">Where the shop's tablets find its jobs, such as <c>https://floor.example:8443</c>; null where there is no such place: codes say then what the label says.</param>
    public static string Html(LoadedJob job, Uri? address)
    {
        ArgumentNullException.ThrowIfNull(job);
        var plan = job.Replay.Course.Plan;
        var book = PackLanguages.BookOf(plan);
        var head = job.Replay.Head!;
        var values = new ScriptObject
        {
            ["say"] = new MessageFunction(book),
            ["language"] = plan.Language,
            ["head"] = new ScriptObject
            {
                ["name"] = job.Name,
                ["title"] = head.Title,
                ["machine"] = head.MachineTitle,
                ["serial"] = head.Serial,
                ["order"] = head.Order,
                ["revision"] = plan.Revision,
            },
            ["labels"] = new ScriptArray(Bags(job, book, address).Concat(Parts(job.Replay, book, job.Name, address))),
        };
        values["style"] = PackRun.Inlined(PackTemplates.Standard.Parsed(Style).Render(new PackContext(PackTemplates.Standard, values)));
        return PackTemplates.Standard.Parsed("job-labels.html").Render(new PackContext(PackTemplates.Standard, values));
    }

    private static IEnumerable<ScriptObject> Bags(LoadedJob job, Wordbook book, Uri? address) => job.Replay.Course.Plan.Bags.Select(bag =>
    {
        var title = book.Say("bags.bag", ("number", bag.Number));
        return Label(title, [.. bag.Contents.Select(line => (Text: $"{line.Count} × {line.Title}{(line.From.Length > 0 ? $", {line.From}" : "")}", line.StripStep, line.RefitStep))],
            Target(job.Name, bag.Number, title, address));
    });

    private static IEnumerable<ScriptObject> Parts(JobReplay replay, Wordbook book, string job, Uri? address) =>
        replay.Course.Steps.Where(step => step is { Phase: CoursePhase.Strip, Target: Part { IsTemporary: false }, Verb: Model.Procedures.Verb.Remove } && step.Line.Scrap.Length == 0)
            .Select(step => Label(step.Line.ItemTitle, [(step.Line.Store, step.Number, step.Line.Mirror)], Target(job, 0, $"{step.Line.ItemTitle}, {book.Say("bags.off-short", ("step", step.Number))}", address)));

    private static ScriptObject Label(string title, ImmutableArray<(string Text, int Off, int Back)> lines, string target) => new()
    {
        ["title"] = title,
        ["lines"] = new ScriptArray(lines.Select(line => new ScriptObject { ["text"] = line.Text, ["off"] = line.Off, ["back"] = line.Back })),
        ["code"] = new Markup(QrDrawing.Svg(target, target)),
    };

    private static string Target(string job, int bag, string words, Uri? address) =>
        address is null ? $"{job}: {words}" : new Uri(address, bag > 0 ? $"b/{job}/{bag}" : $"j/{job}").AbsoluteUri;
}
