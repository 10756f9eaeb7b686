using ProcScript.Analysis;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>The plans of the demo library, one a job.</summary>
internal static class DemoLibrary
{
    private static readonly Lazy<Dictionary<string, (Procedure Procedure, Plan Plan)>> All = new(() => LibraryCheck.Run(new Folder(Checkout.Root)).Procedures
        .Where(report => report.IsProven)
        .GroupBy(report => report.Procedure.Job, StringComparer.Ordinal)
        .ToDictionary(reports => reports.Key, reports => (reports.First().Procedure, reports.First().CreatePlan()!), StringComparer.Ordinal));

    private static readonly Lazy<IReadOnlyDictionary<string, Plan>> AllPlans =
        new(() => All.Value.ToDictionary(one => one.Key, one => one.Value.Plan, StringComparer.Ordinal));

    private static readonly Lazy<IReadOnlyDictionary<string, Plan>> AllGermanPlans = new(() =>
    {
        var store = new Folder(Path.Combine(Checkout.Root, "procedures"));
        var settings = SettingsReader.Read(store).With(SettingsTable.Language, PackLanguage.German).WithTranslation(store);
        return LibraryCheck.Run(LibraryBinder.Bind(settings.Translation!.Over(store)), settings with { Translation = null }).Procedures
            .Where(report => report.IsProven)
            .GroupBy(report => report.Procedure.Job, StringComparer.Ordinal)
            .ToDictionary(reports => reports.Key, reports => reports.First().CreatePlan()!, StringComparer.Ordinal);
    });

    /// <summary>The same plans told in German, as far as the library has translations.</summary>
    public static IReadOnlyDictionary<string, Plan> GermanPlans => AllGermanPlans.Value;

    /// <summary>The plans by their jobs.</summary>
    public static IReadOnlyDictionary<string, Plan> Plans => AllPlans.Value;

    /// <summary>The sources by their paths.</summary>
    public static IReadOnlyDictionary<string, string> Files { get; } = new Folder(Checkout.Root) is var folder
        ? folder.Paths.ToDictionary(path => path, path => folder.Read(path).Content!, StringComparer.Ordinal) : [];

    /// <summary>The plans by their jobs where one file has another text.</summary>
    public static IReadOnlyDictionary<string, Plan> PlansWith(string path, string text) => LibraryCheck.Run(new Folder(Checkout.Root, path, text)).Procedures
        .Where(report => report.IsProven)
        .GroupBy(report => report.Procedure.Job, StringComparer.Ordinal)
        .ToDictionary(reports => reports.Key, reports => reports.First().CreatePlan()!, StringComparer.Ordinal);

    /// <summary>The machine that a job is done on, as its sources say it.</summary>
    public static Machine MachineOf(string job) => All.Value[job].Procedure.Machine;

    /// <summary>What a job does not put back.</summary>
    public static IEnumerable<MachineItem> Discarded(string job) => All.Value[job].Procedure.Stages.SelectMany(stage => stage.Steps)
        .Concat(All.Value[job].Procedure.Work)
        .Where(step => step.Verb == Verb.Discard)
        .Select(step => step.Target!);

    /// <summary>The parts that an author lets stay open when an energy comes back.</summary>
    public static IEnumerable<(Energy Energy, Part Part)> MayBeOpen(string job) =>
        from rule in All.Value[job].Procedure.Rules.OfType<OpenRule>()
        from open in rule.Open
        where open.Item is Part
        select ((Energy)rule.Action.Target, (Part)open.Item);

    private sealed class Folder(string root, string? edited = null, string text = "") : ISourceStore
    {
        private readonly string _sources = root.EndsWith("procedures", StringComparison.Ordinal) ? root : Path.Combine(root, "procedures");

        public IReadOnlyList<string> Paths =>
        [
            .. Directory.EnumerateFiles(_sources, "*.proc", SearchOption.AllDirectories)
                .Select(path => Path.GetRelativePath(root, path).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

        public SourceReading Read(string path) => path == edited ? new SourceReading(text, SourceOutcome.Read) : Path.Combine(root, path) is var full && File.Exists(full)
            ? new SourceReading(File.ReadAllText(full), SourceOutcome.Read)
            : new SourceReading(null, SourceOutcome.Missing);

        public FigureFile FindFigure(string path) => Path.Combine(root, path) is var full && File.Exists(full) ? FigureFile.Of(File.ReadAllBytes(full)) : FigureFile.Missing;
    }
}
