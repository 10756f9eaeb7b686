using System.Collections.Frozen;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Sources;
using ProcScript.Model.Figures;

namespace ProcScript.Cli.Versions;

/// <summary>A library that is kept in a Git repository: at its top or in a folder of it.</summary>
internal sealed class GitLibrary
{
    private static readonly string[] Pictures = [":(icase)*.svg", ":(icase)*.png", ":(icase)*.jpg", ":(icase)*.jpeg", ":(icase)*.webp"];

    private readonly GitProcess _git;
    private readonly string _root;

    private GitLibrary(GitProcess git, string root) => (_git, _root) = (git, root);

    /// <summary>Opens the repository that a library lies in.</summary>
    /// <param name="root">The library's root folder, as a full path.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="UsageException">There is no Git, or no repository.</exception>
    public static async Task<GitLibrary> OpenAsync(string root, CancellationToken stop)
    {
        GitProcess git = new(root);
        var answer = await git.RunAsync(["rev-parse", "--is-inside-work-tree"], stop);
        if (answer.Succeeded && answer.Line == "true")
        {
            return new GitLibrary(git, root);
        }

        var why = answer.Complaint.Contains("dubious ownership", StringComparison.Ordinal)
            ? $"Git does not trust it, since it belongs to another user; 'git config --global --add safe.directory \"{root}\"' tells it to."
            : "there is no Git repository in it or above it.";
        throw new UsageException($"the revisions of '{root}' are not known: {why}");
    }

    /// <summary>The commit that a revision names.</summary>
    /// <param name="revision">A branch, a tag, a commit, or whatever else Git knows one by.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="UsageException">There is none.</exception>
    public async Task<string> CommitAsync(string revision, CancellationToken stop)
    {
        var answer = await _git.RunAsync(["rev-parse", "--verify", "--quiet", "--end-of-options", revision + "^{commit}"], stop);
        if (answer.Succeeded)
        {
            return answer.Line;
        }

        var shallow = await _git.RunAsync(["rev-parse", "--is-shallow-repository"], stop);
        throw new UsageException(shallow.Line == "true"
            ? $"there is no revision '{revision}' in this clone, which is shallow; 'git fetch --unshallow' gets the rest, and a build server has a setting for it."
            : $"there is no revision '{revision}': name a branch, a tag or a commit of this repository.");
    }

    /// <summary>
    /// The files of the library that are not now as they were: changed, new, renamed (under both names) or deleted, committed or not. What
    /// Git does not keep counts as changed, since nobody can tell. A submodule is looked into, as it was at that commit and as it is now.
    /// </summary>
    /// <param name="commit">The commit that they are compared with.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>Their paths; null where a submodule has changed that Git knows no earlier state of, so that anything may have.</returns>
    /// <exception cref="UsageException">Git cannot tell.</exception>
    public async Task<FrozenSet<string>?> ChangedSinceAsync(string commit, CancellationToken stop)
    {
        var names = await NamesAsync(
            ["diff", "--name-only", "-z", "--no-renames", "--no-ext-diff", "--relative", "--ignore-submodules=none", "--submodule=short", commit, "--"], stop);
        var untracked = await NamesAsync(["ls-files", "-z", "--others", "--", "*.[pP][rR][oO][cC]", SettingsKeys.FileName, .. Pictures], stop);
        HashSet<string> changed = [.. names, .. untracked];
        foreach (var (path, earlier) in await SubmodulesAsync(commit, stop))
        {
            if (changed.Contains(path))
            {
                if (await WithinAsync(path, earlier, stop) is not { } within)
                {
                    return null;
                }

                changed.UnionWith(within);
            }
        }

        var kept = (await NamesAsync(["ls-files", "-z", "--recurse-submodules"], stop)).ToHashSet(StringComparer.Ordinal);
        changed.UnionWith(ProcFiles.In(_root).Select(file => RelativePath.Inside(_root, file)).Where(path => !kept.Contains(path)));
        return changed.ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>The submodules of now and of then, each with its commit of then; empty where there was none.</summary>
    private async Task<Dictionary<string, string>> SubmodulesAsync(string commit, CancellationToken stop)
    {
        const string mode = "160000 ";
        var now = await NamesAsync(["ls-files", "-z", "--stage"], stop);
        var then = await NamesAsync(["ls-tree", "-r", "-z", commit], stop);
        var found = now.Where(entry => entry.StartsWith(mode, StringComparison.Ordinal)).Select(entry => entry.Split('\t', 2)[1]).Distinct().ToDictionary(path => path, _ => "", StringComparer.Ordinal);
        foreach (var entry in then.Where(entry => entry.StartsWith(mode, StringComparison.Ordinal)).Select(entry => entry.Split('\t', 2)))
        {
            found[entry[1]] = entry[0].Split(' ')[2];
        }

        return found;
    }

    /// <summary>What has changed in a submodule, by paths of the library; null where Git has not both states.</summary>
    private async Task<IEnumerable<string>?> WithinAsync(string path, string earlier, CancellationToken stop)
    {
        var folder = Path.Combine(_root, path);
        if (!Path.Exists(Path.Combine(folder, ".git")) || earlier.Length == 0)
        {
            return null;
        }

        GitLibrary submodule = new(new GitProcess(folder), folder);
        var known = await submodule._git.RunAsync(["cat-file", "-e", earlier + "^{commit}"], stop);
        return known.Succeeded && await submodule.ChangedSinceAsync(earlier, stop) is { } changed ? changed.Select(name => $"{path}/{name}") : null;
    }

    /// <summary>The sources, settings and pictures of the library as they were at a commit, by their paths; linked files are left out.</summary>
    /// <param name="commit">The commit.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="UsageException">Git cannot tell.</exception>
    public async Task<FrozenDictionary<string, byte[]>> SourcesAtAsync(string commit, CancellationToken stop)
    {
        var entries = (await NamesAsync(["ls-tree", "-r", "-z", commit], stop))
            .Select(entry => entry.Split('\t', 2))
            .Select(entry => (About: entry[0].Split(' '), Path: entry[1]))
            .Where(entry => entry.About[0].StartsWith("100", StringComparison.Ordinal) && (ProcFiles.IsSource(entry.Path) || entry.Path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || FigureFormats.ByName(entry.Path) is not null))
            .ToList();
        var answer = await _git.RunAsync(["cat-file", "--batch"], string.Concat(entries.Select(entry => entry.About[2] + "\n")), stop);
        if (!answer.Succeeded)
        {
            throw new UsageException($"Git cannot read the revision: {answer.Complaint}");
        }

        var contents = GitAnswer.Objects(answer.Output).ToList();
        return contents.Count == entries.Count
            ? entries.Zip(contents).ToFrozenDictionary(pair => pair.First.Path, pair => pair.Second, StringComparer.Ordinal)
            : throw new UsageException("Git cannot read the revision: objects of it are missing in this clone.");
    }

    private async Task<IEnumerable<string>> NamesAsync(IEnumerable<string> arguments, CancellationToken stop)
    {
        var answer = await _git.RunAsync(arguments, stop);
        return answer.Succeeded ? answer.Names : throw new UsageException($"Git cannot tell what has changed: {answer.Complaint}");
    }
}
