using ProcScript.Model.Rules;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Tests.Rules;

/// <summary>The cases of every rule of this room: the firing ones fire it, the near misses are quiet throughout.</summary>
public sealed class RuleCaseTests
{
    /// <summary>A file that cannot be read is no case on a disk; <see cref="Binding.FileTests"/> has it.</summary>
    private const string UnreadableFile = "PRC1107";

    public static TheoryData<string> Codes => [.. ModelRules.All.Select(rule => rule.Info.Code).Where(code => code != UnreadableFile)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_firing_case_fires_it(string code) => Assert.Contains(code, Bind(code, "fires"));

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_near_miss_is_quiet(string code) => Assert.Empty(Bind(code, "quiet"));

    private static IEnumerable<string> Bind(string code, string kind)
    {
        var folder = Path.Combine(Checkout.Cases, "rules", code, kind);
        var files = Directory.EnumerateFiles(folder, "*.proc", SearchOption.AllDirectories)
            .Select(path => KeyValuePair.Create(Path.GetRelativePath(folder, path), File.ReadAllText(path)));
        var library = LibraryBinder.Bind(new MemorySourceStore(files), TestContext.Current.CancellationToken);
        return library.Findings.Select(finding => finding.Rule.Code);
    }
}
