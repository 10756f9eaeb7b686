using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Model.Sources;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>The plans of the demo library, one a job.</summary>
internal static class DemoLibrary
{
    private static readonly Lazy<IReadOnlyDictionary<string, Plan>> AllPlans = new(() => LibraryCheck.Run(new Folder()).Procedures
        .Select(report => report.CreatePlan())
        .OfType<Plan>()
        .GroupBy(plan => plan.Job, StringComparer.Ordinal)
        .ToDictionary(plans => plans.Key, plans => plans.First(), StringComparer.Ordinal));

    /// <summary>The plans by their jobs.</summary>
    public static IReadOnlyDictionary<string, Plan> Plans => AllPlans.Value;

    private sealed class Folder : ISourceStore
    {
        private readonly string _root = Root();

        public IReadOnlyList<string> Paths =>
        [
            .. Directory.EnumerateFiles(Path.Combine(_root, "procedures"), "*.proc", SearchOption.AllDirectories)
                .Select(path => Path.GetRelativePath(_root, path).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

        public SourceReading Read(string path) => Path.Combine(_root, path) is var full && File.Exists(full)
            ? new SourceReading(File.ReadAllText(full), SourceOutcome.Read)
            : new SourceReading(null, SourceOutcome.Missing);

        private static string Root()
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "ProcScript.sln")))
            {
                folder = folder.Parent ?? throw new InvalidOperationException("The tests do not run from a checkout.");
            }

            return folder.FullName;
        }
    }
}
