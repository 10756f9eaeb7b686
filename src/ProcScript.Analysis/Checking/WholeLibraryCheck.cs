using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Lets the rules judge a library as a whole. They speak only where it is known to be whole: its root has settings, all below the root was
/// asked about, and all of it is checked. Of a part nobody can say what is used nowhere. What they said is kept machine by machine, so that
/// after a change of a few procedures only their machines are judged again.
/// </summary>
internal sealed class WholeLibraryCheck
{
    private static readonly ImmutableArray<MachineFamilyRule> FamilyRules = [.. AnalysisRules.All.OfType<MachineFamilyRule>()];
    private static readonly ImmutableArray<LibraryRule> OtherRules = [.. AnalysisRules.All.OfType<LibraryRule>().Where(rule => rule is not MachineFamilyRule)];

    private readonly LibraryMentions _mentions = new();
    private readonly FrozenSet<string> _live;
    private readonly OrderedDictionary<SourceSpan, (MachineFamily Family, ImmutableArray<int> Places)> _families = [];
    private readonly Dictionary<SourceSpan, ImmutableArray<Finding>> _ofFamilies = [];
    private ImmutableArray<Finding> _others;

    private WholeLibraryCheck(Library library, ProcedureTraces[] traces)
    {
        _live = LiveFiles.Of(library);
        var places = traces.Index().ToLookup(one => one.Item.Procedure.Machine.Declared, one => one.Index);
        foreach (var machine in library.Machines.GroupBy(machine => machine.Declared))
        {
            _families.Add(machine.Key, (new MachineFamily(machine.Key, [.. machine], []), [.. places[machine.Key]]));
        }
    }

    /// <summary>What the rules have to say.</summary>
    public IEnumerable<Finding> Findings => _others.Concat(_families.Keys.SelectMany(declared => _ofFamilies[declared]));

    /// <summary>Whether the rules speak of a library.</summary>
    public static bool Speaks(Library library, CheckSettings settings, CheckScope scope) =>
        library.IsWhole && scope.FileCount is null && settings.Files.Any(file => file.Path == SettingsKeys.FileName);

    /// <summary>Judges a library that the rules speak of.</summary>
    public static WholeLibraryCheck Of(Library library, CheckSettings settings, ProcedureTraces[] traces, CheckMemory memory, ParallelOptions parallel)
    {
        var check = new WholeLibraryCheck(library, traces);
        check.Judge(library, settings, traces, library.Trees.Keys, [.. check._families.Keys], memory, parallel);
        return check;
    }

    /// <summary>Judges it again after a step.</summary>
    /// <param name="library">The library now.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="traces">What the procedures leave behind, in their order.</param>
    /// <param name="changed">The files that changed.</param>
    /// <param name="machines">Where the machines are declared whose procedures came out otherwise.</param>
    /// <param name="memory">What is remembered.</param>
    /// <param name="parallel">How to run in parallel.</param>
    public void Judge(
        Library library,
        CheckSettings settings,
        ProcedureTraces[] traces,
        IEnumerable<string> changed,
        IReadOnlyList<SourceSpan> machines,
        CheckMemory memory,
        ParallelOptions parallel)
    {
        var isOther = _others.IsDefault;
        SyntaxTree[] trees = [.. changed.Select(path => library.Trees[path])];
        var mentioned = new ImmutableArray<MentionedNames>[trees.Length];
        Parallel.For(0, trees.Length, parallel, i => mentioned[i] = MentionedNames.Of(trees[i], memory.Mentioned));
        foreach (var (tree, names) in trees.Zip(mentioned))
        {
            isOther |= _mentions.Set(tree.Text.Path, names);
        }

        foreach (var declared in machines)
        {
            var (family, places) = _families[declared];
            _families[declared] = (family with { Traces = [.. places.Select(place => traces[place])] }, places);
        }

        var view = new LibraryView(library, settings, [.. _families.Values.Select(one => one.Family)], _live, _mentions);
        var findings = new ImmutableArray<Finding>[machines.Count];
        Parallel.For(0, findings.Length, parallel, i => findings[i] = [.. FamilyRules.SelectMany(rule => rule.Check(view, _families[machines[i]].Family))]);
        foreach (var (declared, said) in machines.Zip(findings))
        {
            _ofFamilies[declared] = said;
        }

        if (isOther)
        {
            var others = new ImmutableArray<Finding>[OtherRules.Length];
            Parallel.For(0, others.Length, parallel, i => others[i] = [.. OtherRules[i].Check(view)]);
            _others = [.. others.SelectMany(one => one)];
        }
    }
}
