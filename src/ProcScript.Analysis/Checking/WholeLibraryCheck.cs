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
/// asked about, and all of it is checked. Of a part nobody can say what is used nowhere. What a rule said is kept, of those about machines
/// machine by machine, for as long as nothing changes that it has looked at.
/// </summary>
internal sealed class WholeLibraryCheck
{
    private static readonly ImmutableArray<MachineFamilyRule> FamilyRules = [.. AnalysisRules.All.OfType<MachineFamilyRule>()];
    private static readonly ImmutableArray<LibraryRule> OtherRules = [.. AnalysisRules.All.OfType<LibraryRule>().Where(rule => rule is not MachineFamilyRule)];

    private readonly LibraryMentions _mentions = new();
    private readonly Said?[] _others = new Said?[OtherRules.Length];
    private OrderedDictionary<SourceSpan, (MachineFamily Family, Said? Said)> _families = [];
    private FrozenSet<string> _live = [];

    /// <summary>What the rules have to say.</summary>
    public IEnumerable<Finding> Findings => _others.Concat(_families.Values.Select(one => one.Said)).SelectMany(said => said!.Findings);

    /// <summary>Whether the rules speak of a library.</summary>
    public static bool Speaks(Library library, CheckSettings settings, CheckScope scope) =>
        library.IsWhole && scope.FileCount is null && settings.Files.Any(file => file.Path == SettingsKeys.FileName);

    /// <summary>Judges a library that the rules speak of, for the first time or after a change.</summary>
    /// <param name="change">What is another than at the last time; null at the first.</param>
    /// <param name="library">The library now.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="traces">What the procedures leave behind, in their order.</param>
    /// <param name="memory">What is remembered.</param>
    /// <param name="parallel">How to run in parallel.</param>
    public void Judge(LibraryChange? change, Library library, CheckSettings settings, ProcedureTraces[] traces, CheckMemory memory, ParallelOptions parallel)
    {
        var changed = change is null ? LibraryFacet.All : Changed(change);
        var families = Families(library, traces);
        changed |= families.Values.SequenceEqual(_families.Values.Select(one => one.Family)) ? LibraryFacet.None : LibraryFacet.Families;
        if (Mention([.. change is null ? library.Trees.Values : change.Files.Select(path => library.Trees[path])], memory, parallel))
        {
            changed |= LibraryFacet.Mentions;
        }

        if (change is null || change.AreUsesOther)
        {
            var live = LiveFiles.Of(library);
            changed |= live.SetEquals(_live) ? LibraryFacet.None : LibraryFacet.Live;
            _live = live;
        }

        var facts = new LibraryFacts(library, settings.Everywhere, families.Values, _live, _mentions);
        Tell(facts, changed, parallel);
        Tell(families, facts, changed, parallel);
    }

    private static LibraryFacet Changed(LibraryChange change) =>
        (change.AreKindsOther ? LibraryFacet.Kinds : LibraryFacet.None)
        | (change.AreToolsOther ? LibraryFacet.Tools : LibraryFacet.None)
        | (change.AreEntriesOther ? LibraryFacet.Entries : LibraryFacet.None)
        | (change.AreProcedureTextsOther ? LibraryFacet.Procedures : LibraryFacet.None);

    /// <summary>The machines with their procedures; those that are as before are the same objects.</summary>
    private OrderedDictionary<SourceSpan, MachineFamily> Families(Library library, ProcedureTraces[] traces)
    {
        var places = traces.ToLookup(one => one.Procedure.Machine.Declared);
        var families = new OrderedDictionary<SourceSpan, MachineFamily>();
        foreach (var machine in library.Machines.GroupBy(machine => machine.Declared))
        {
            var family = new MachineFamily(machine.Key, [.. machine], [.. places[machine.Key]]);
            families.Add(machine.Key, _families.TryGetValue(machine.Key, out var known) && known.Family.IsSame(family) ? known.Family : family);
        }

        return families;
    }

    /// <summary>Takes note of the names in some files; whether one is mentioned now that was not, or the other way.</summary>
    private bool Mention(SyntaxTree[] trees, CheckMemory memory, ParallelOptions parallel)
    {
        var mentioned = new ImmutableArray<MentionedNames>[trees.Length];
        Parallel.For(0, trees.Length, parallel, i => mentioned[i] = MentionedNames.Of(trees[i], memory.Mentioned));
        var isOther = false;
        foreach (var (tree, names) in trees.Zip(mentioned))
        {
            isOther |= _mentions.Set(tree.Text.Path, names);
        }

        return isOther;
    }

    private void Tell(LibraryFacts facts, LibraryFacet changed, ParallelOptions parallel) => Parallel.For(0, OtherRules.Length, parallel, i =>
    {
        if (_others[i] is not { } said || (said.Seen & changed) != 0)
        {
            var view = new LibraryView(facts);
            _others[i] = new Said([.. OtherRules[i].Check(view)], view);
        }
    });

    private void Tell(OrderedDictionary<SourceSpan, MachineFamily> families, LibraryFacts facts, LibraryFacet changed, ParallelOptions parallel)
    {
        var now = new (MachineFamily Family, Said? Said)[families.Count];
        var missing = new List<int>();
        foreach (var (place, family) in families.Values.Index())
        {
            var known = _families.TryGetValue(family.Declared, out var before) && ReferenceEquals(before.Family, family) && (before.Said!.Seen & changed) == 0;
            now[place] = (family, known ? before.Said : null);
            if (!known)
            {
                missing.Add(place);
            }
        }

        Parallel.For(0, missing.Count, parallel, i =>
        {
            var (family, view) = (now[missing[i]].Family, new LibraryView(facts));
            now[missing[i]] = (family, new Said([.. FamilyRules.SelectMany(rule => rule.Check(view, family))], view));
        });
        _families = new OrderedDictionary<SourceSpan, (MachineFamily Family, Said? Said)>(now.Select(one => KeyValuePair.Create(one.Family.Declared, one)));
    }

    /// <summary>What rules said, and what they had looked at when they had said it.</summary>
    private sealed class Said(ImmutableArray<Finding> findings, LibraryView view)
    {
        public ImmutableArray<Finding> Findings => findings;

        public LibraryFacet Seen { get; } = view.Seen;
    }
}
