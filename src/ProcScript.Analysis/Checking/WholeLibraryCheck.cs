using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Machines;
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
    private OrderedDictionary<SourceSpan, ToldFamily> _families = [];
    private ILookup<SourceSpan, int> _places = Array.Empty<int>().ToLookup(_ => default(SourceSpan));
    private ImmutableArray<ProcedureTraces> _traces = [];
    private FrozenSet<string> _live = [];

    /// <summary>What the rules have to say.</summary>
    public IEnumerable<Finding> Findings => _others.Concat(_families.Values.Select(told => told.Said)).SelectMany(said => said!.Findings);

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
        changed |= Gather(library, [.. traces], isAll: change is null || change.AreMachinesOther) ? LibraryFacet.Families : LibraryFacet.None;
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

        var facts = new LibraryFacts(library, settings.Everywhere, [.. _families.Values.Select(told => told.Family)], _live, _mentions);
        Parallel.For(0, OtherRules.Length, parallel, i => _others[i] = Holding(_others[i], changed) ?? Said.Of(OtherRules[i].Check, facts));
        ToldFamily[] open = [.. _families.Values.Where(told => Holding(told.Said, changed) is null)];
        Parallel.For(0, open.Length, parallel, i => open[i].Said = Said.Of(view => FamilyRules.SelectMany(rule => rule.Check(view, open[i].Family)), facts));
    }

    private static LibraryFacet Changed(LibraryChange change) =>
        (change.Files.Count > 0 ? LibraryFacet.Texts : LibraryFacet.None)
        | (change.AreKindsOther ? LibraryFacet.Kinds : LibraryFacet.None)
        | (change.AreToolsOther ? LibraryFacet.Tools : LibraryFacet.None)
        | (change.AreEntriesOther ? LibraryFacet.Entries : LibraryFacet.None)
        | (change.AreProcedureTextsOther ? LibraryFacet.Procedures : LibraryFacet.None);

    /// <summary>Takes the machines with their procedures; those that are as before stay the same objects. Whether there is another.</summary>
    private bool Gather(Library library, ImmutableArray<ProcedureTraces> traces, bool isAll)
    {
        var before = _traces;
        _traces = traces;
        if (isAll)
        {
            _places = traces.Index().ToLookup(one => one.Item.Procedure.Machine.Declared, one => one.Index);
            var known = _families;
            _families = [];
            foreach (var machine in library.Machines.GroupBy(machine => machine.Declared))
            {
                var family = Family(machine.Key, [.. machine]);
                _families.Add(machine.Key, known.TryGetValue(machine.Key, out var told) && told.Family.IsSame(family) ? told : new ToldFamily(family));
            }

            return !_families.Values.SequenceEqual(known.Values, ReferenceEqualityComparer.Instance);
        }

        var others = Enumerable.Range(0, traces.Length).Where(place => !ReferenceEquals(before[place], traces[place])).Select(place => traces[place].Procedure.Machine.Declared).Distinct().ToList();
        foreach (var declared in others)
        {
            _families[declared] = new ToldFamily(Family(declared, _families[declared].Family.Variants));
        }

        return others.Count > 0;

        MachineFamily Family(SourceSpan declared, ImmutableArray<Machine> variants) => new(declared, variants, [.. _places[declared].Select(place => traces[place])]);
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

    /// <summary>What was said, where nothing changed that was looked at for it.</summary>
    private static Said? Holding(Said? said, LibraryFacet changed) => said is not null && (said.Seen & changed) == 0 ? said : null;

    /// <summary>A machine with its procedures, and what was said of it; null before anything was.</summary>
    private sealed class ToldFamily(MachineFamily family)
    {
        public MachineFamily Family => family;

        public Said? Said { get; set; }
    }

    /// <summary>What rules said, and what they had looked at when they had said it.</summary>
    private sealed record Said(ImmutableArray<Finding> Findings, LibraryFacet Seen)
    {
        public static Said Of(Func<LibraryView, IEnumerable<Finding>> check, LibraryFacts facts)
        {
            var view = new LibraryView(facts);
            ImmutableArray<Finding> findings = [.. check(view)];
            return new Said(findings, view.Seen);
        }
    }
}
