using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Jobs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.LanguageServer.Completing;

/// <summary>What can be done at a step: the machine as it stands there, and what the procedure has done by then.</summary>
/// <param name="here">What is known around the place where one types.</param>
/// <param name="at">Where the step begins that is meant.</param>
/// <param name="block">The block that it stands in.</param>
internal sealed class StepOutlook(Vicinity here, int at, string block)
{
    private const int StepsLookedAt = 8;

    private readonly Dictionary<string, Prospects> _prospects = new(StringComparer.Ordinal);
    private MachineItem[]? _last;
    private MachineMoment? _moment;

    /// <summary>What a verb can be done to, by its word; in the order of the machine.</summary>
    public ImmutableArray<MachineItem> Targets(string verb) => ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is { } row && here.Machine is { } machine
        ? [.. machine.Items.Values.Where(row.Suits).OrderBy(item => item.Declared.Span.Start).ThenBy(item => item.Name, StringComparer.Ordinal)]
        : [];

    /// <summary>What a verb can be done to here.</summary>
    public Prospects Of(string verb)
    {
        if (!_prospects.TryGetValue(verb, out var prospects))
        {
            _prospects[verb] = prospects = Judge(verb);
        }

        return prospects;
    }

    /// <summary>What an item is like here; nothing where that is not known.</summary>
    public string Words(MachineItem item) => Moment?.Words(item) ?? "";

    /// <summary>In the refit: what the strip has undone, which the verb does again, stands first; the last of it before the others.</summary>
    public IEnumerable<MachineItem> DoneFirst(string verb, IEnumerable<MachineItem> items)
    {
        var last = new Dictionary<MachineItem, int>();
        foreach (var action in Trial?.Actions ?? [])
        {
            if (action.Target is { } target && (ActionTable.Row(action.Verb).Inverse is not { } inverse || ActionTable.Row(inverse).Word == verb || verb is "fasten" or "tighten" or "snug"))
            {
                last[target] = action.Number;
            }
        }

        return items.OrderByDescending(item => last.GetValueOrDefault(item, -1));
    }

    /// <summary>Whether the strip has done what the verb undoes.</summary>
    public bool IsForSomething(string verb) => Trial?.Actions.Any(action => ActionTable.Row(action.Verb) is { Inverse: { } inverse } && ActionTable.Row(inverse).Word == verb) ?? false;

    /// <summary>Those whose name the procedure's name or title speaks of stand first, the more of it the better.</summary>
    public IEnumerable<MachineItem> BestMatching(IEnumerable<MachineItem> items)
    {
        return items.OrderByDescending(item =>
        {
            var own = WordsOf(item.Name).Concat(WordsOf(item.Title)).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
            return own.Count == 0 ? 0 : own.Count(Spoken.Contains) / (double)own.Count;
        });
    }

    private HashSet<string> Spoken => field ??= JobsInText.DeclarationAt(here.Asked, here.Offset) is { } own
        ? WordsOf($"{own.Name.Text} {own.Title?.Value}").ToHashSet(StringComparer.OrdinalIgnoreCase)
        : [];

    private MachineMoment? Moment => _moment ??= Trial?.Before(here.Asked.Path, at);

    private ProcedureTrial? Trial => here.Trial;

    private Prospects Judge(string verb)
    {
        var suited = Targets(verb);
        if (ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is not { } row || Moment is not { } moment || block == "refit")
        {
            return new Prospects(suited, []);
        }

        var open = suited.Where(item => !moment.IsDone(row.Verb == Verb.Strip ? Verb.Remove : row.Verb, item)).ToLookup(item => moment.CanDo(row.Verb, item));
        var possible = open[true].OrderByDescending(item => LastTouched(item)).ToImmutableArray();
        // What never came off is neither replaced nor thrown away.
        ImmutableArray<(MachineItem, string)> blocked = row.Verb is Verb.Replace or Verb.Discard
            ? []
            : [.. open[false].Select(item => (item, Why: string.Join("; ", moment.Missing(row.Verb, item)))).OrderBy(one => one.Why.Count(letter => letter == ';'))];
        // Where there is nothing left to do, whoever types the verb means to do it again.
        possible = possible.IsEmpty && blocked.IsEmpty && row.Verb is not (Verb.Replace or Verb.Discard) ? suited : possible;
        return new Prospects(row.Phase == ActionPhase.Work ? [.. BestMatching(possible)] : possible, blocked);
    }

    /// <summary>Whether the last step has freed something that the verb can be done to.</summary>
    public bool IsFresh(string verb) => Of(verb).Possible.Any(item => LastTouched(item) == Last.Length) && Last.Length > 0;

    /// <summary>Whether the name or the title of the procedure speaks of a verb.</summary>
    public bool IsSpokenOf(string verb) => Spoken.Contains(verb);

    /// <summary>What the last steps have freed is what one goes on with: a part of which the last joint has just come off.</summary>
    private int LastTouched(MachineItem item) => Array.FindLastIndex(Last, target => target == item || IsNear(target, item)) + 1;

    private MachineItem[] Last => _last ??=
    [
        .. (Trial?.Actions ?? [])
            .TakeWhile(action => ProcedureTrial.PlaceIn(here.Asked.Path, action) is not { } place || place.Start < at)
            .Select(action => action.Target)
            .OfType<MachineItem>()
            .TakeLast(StepsLookedAt),
    ];

    private static bool IsNear(MachineItem done, MachineItem item) => (done, item) switch
    {
        (Joint joint, Part part) => joint.Owner == part,
        (Joint joint, Joint other) => joint.Owner == other.Owner || joint.Over == other,
        (_, Part { Conditions: var conditions }) => conditions.Any(condition => condition.Item == done),
        (_, Joint { Conditions: var conditions, Owner.Conditions: var around }) => conditions.Concat(around).Any(condition => condition.Item == done),
        _ => false,
    };

    private static IEnumerable<string> WordsOf(string text) => text.Split([' ', '_', '[', ']', ',', '{', '}', '-'], StringSplitOptions.RemoveEmptyEntries).Where(word => word.Length > 2);
}

/// <summary>What a verb can be done to at a step.</summary>
/// <param name="Possible">What it can be done to now; where the machine is not known, all that it suits.</param>
/// <param name="Blocked">What it suits and cannot be done to yet, with what is missing.</param>
internal sealed record Prospects(ImmutableArray<MachineItem> Possible, ImmutableArray<(MachineItem Item, string Why)> Blocked);
