using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Saying;

/// <summary>
/// Follows a proven procedure and reads what its steps say, sentence by sentence: where one names something of the machine that is not so at
/// that moment, before the step and after it. Only plain cases: what a sentence says of before, after, off or new is left alone, and so is
/// the work between strip and refit, and whatever is done on the bench.
/// </summary>
internal sealed partial class SaidAgainstSo
{
    private readonly StripRun _strip;
    private readonly MachineState _state;
    private readonly Dictionary<StateVariable, PerformedAction> _changed = [];
    private readonly List<Contradiction> _found = [];

    private SaidAgainstSo(StripRun strip) => (_strip, _state) = (strip, strip.Start.Copy());

    /// <summary>What is said against what is so; nothing where texts are not to be read as English.</summary>
    public static ImmutableArray<Contradiction> In(ProcedureOutcome outcome)
    {
        if (outcome is not { Strip: { } strip, Refit: { } refit } || outcome.OwnSettings.Get(SettingsTable.Wording) == WordingChoice.Neutral)
        {
            return [];
        }

        var reader = new SaidAgainstSo(strip);
        var work = strip.Work.Length == 0 ? -1 : strip.Work[0].Number;
        foreach (var action in strip.Actions)
        {
            reader.Read(action, isWork: work >= 0 && action.Number >= work);
        }

        foreach (var action in refit.Actions)
        {
            reader.Read(action, isWork: false);
        }

        return [.. reader._found];
    }

    private void Read(PerformedAction action, bool isWork)
    {
        foreach (var change in action.Changes)
        {
            _state.Apply(change);
            _changed[change.Variable] = action;
        }

        // Nothing has been changed yet, so all is as people take it to be; and on the bench anything may lie about.
        if (_changed.Count == 0 || isWork || IsOnTheBench(action.Target))
        {
            return;
        }

        ReadTexts(action);
    }

    private void Read(string text, PerformedAction action, TakenReading? reading = null)
    {
        if (_strip.Facts.Titles.In(text) is { IsEmpty: false } named && reading?.NeedsPresence != true)
        {
            foreach (var items in named)
            {
                Read(items, action, isReading: reading is not null);
            }
        }
    }

    private void Read(NamedItems named, PerformedAction action, bool isReading)
    {
        var words = named.Sentence.ToString();
        if (named.Items.All(item => IsAgainst(item, named.Sentence, words, named.End, action, isReading)))
        {
            var item = named.Items[0];
            _found.Add(new Contradiction(item, words, action, LastChange(item)));
        }
    }

    private bool IsAgainst(MachineItem item, Sentence sentence, string words, int end, PerformedAction action, bool isReading) => item switch
    {
        Part part => OutRoot(part) is { } root && !IsOwn(root, action) && !action.Changes.Any(change => change.Variable == Place(root)) && !Elsewhere().IsMatch(words),
        Energy energy => isReading && !Is(StateKind.Live, energy, (int)EnergyState.Live) && IsSettled(StateKind.Live, energy, action) && OfPower().IsMatch(words) && !OfDeath().IsMatch(words),
        Fluid fluid => isReading && Is(StateKind.Full, fluid, 0) && IsSettled(StateKind.Full, fluid, action) && OfLevel().IsMatch(words) && !Elsewhere().IsMatch(words),
        Control control => IsSettled(StateKind.Position, control, action)
            && SaidPosition(control, sentence, end) is >= 0 and var said && said != _state[new StateVariable(StateKind.Position, control.Index)] && !Moving().IsMatch(words),
        Joint joint => isReading && _state.Attached(joint) == 0 && action.Target != joint && OfClosing().IsMatch(words) && !Elsewhere().IsMatch(words) && !_strip.Discarded.Contains(joint),
        _ => false,
    };

    private bool Is(StateKind kind, MachineItem item, int value) => _state[new StateVariable(kind, item.Index)] == value;

    private static bool IsSettled(StateKind kind, MachineItem item, PerformedAction action) =>
        !action.Changes.Any(change => change.Variable == new StateVariable(kind, item.Index));

    private static StateVariable Place(Part part) => new(StateKind.Place, part.Index);

    /// <summary>The outermost part that is off and takes this one along; null where it is in the machine, or gone for good.</summary>
    private Part? OutRoot(Part part)
    {
        Part? root = null;
        for (var at = part; at is not null; at = at.Parent)
        {
            root = _state.Place(at) == PartPlace.Out ? at : root;
        }

        return root;
    }

    private bool IsOnTheBench(MachineItem? item) => item switch
    {
        Part part => part.Parent is { } parent && OutRoot(parent) is not null,
        Joint joint => OutRoot(joint.Owner) is not null,
        _ => false,
    };

    /// <summary>Whether a step is about the part itself, or something that ties it.</summary>
    private static bool IsOwn(Part root, PerformedAction action) => action.Target switch
    {
        Part part => part.IsWithin(root) || root.IsWithin(part),
        Joint joint => joint.Owner.IsWithin(root) || joint.Other?.IsWithin(root) == true,
        _ => false,
    };

    private PerformedAction? LastChange(MachineItem item)
    {
        StateVariable? variable = item switch
        {
            Part part => OutRoot(part) is { } root ? Place(root) : null,
            Joint joint => new StateVariable(StateKind.Attached, joint.Index),
            Energy energy => new StateVariable(StateKind.Live, energy.Index),
            Fluid fluid => new StateVariable(StateKind.Full, fluid.Index),
            Control control => new StateVariable(StateKind.Position, control.Index),
            _ => null,
        };
        return variable is { } known ? _changed.GetValueOrDefault(known) : null;
    }

    /// <summary>The position in which words say that a control stands; -1 where they say none.</summary>
    private static int SaidPosition(Control control, Sentence sentence, int at)
    {
        var words = sentence.Words;
        at += at < words.Length && (words[at].Is("is") || words[at].Is("stands") || words[at].Is("sits")) ? 1 : 0;
        if (at + 1 >= words.Length || !(words[at].Is("at") || words[at].Is("in") || words[at].Is("on")))
        {
            return -1;
        }

        at += words[at + 1].Is("the") ? 2 : 1;
        return at < words.Length ? control.Positions.IndexOf(words[at].Text, StringComparer.OrdinalIgnoreCase) : -1;
    }

    /// <summary>Reads the texts of a step; those that take a reading or look at something as such.</summary>
    private void ReadTexts(PerformedAction action)
    {
        var details = StepOrigin.Details(action);
        foreach (var reading in TakenReading.Of(action, details))
        {
            Read(reading.Text, action, reading);
        }

        if (StepOrigin.Step(action.Origin) is { Verb: Verb.Task, Text: { } task })
        {
            Read(task, action);
        }

        foreach (var text in details.How)
        {
            Read(text, action);
        }

        foreach (var text in details.Photos)
        {
            Read(text, action);
        }

        if (details.Store is { } store)
        {
            Read(store, action);
        }

        var (own, mirrored) = StepOrigin.Alerts(action.Origin);
        foreach (var alert in own)
        {
            Read(alert.Text, action);
        }

        foreach (var alert in mirrored)
        {
            Read(alert.Text, action);
        }
    }

    [GeneratedRegex(
        @"\b(remov\w+|off|out|bench|aside|old|new|spare|scrap\w*|later|before|until|till|when|once|after|will|goes?|comes?|back|fit(s|ted|ting)?|refit\w*|return\w*|"
        + @"stor\w+|laid|lay|boxe?d?|bags?|shelf|instead|without|missing|open|mark\w*|where|next)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Elsewhere();

    [GeneratedRegex(@"\b(lights?|lit|runs?|turns?|starts?|glows?|works?|live|hums?|blinks?|sounds?|charges?|feeds?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfPower();

    [GeneratedRegex(@"\b(dark|dead|off|isolated|not?|nothing|zero|discharged|cut|away|before|after|when|once|until|later)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfDeath();

    [GeneratedRegex(@"\b(levels?|stands?|mark|full|flows?|circulat\w+|reaches|glass)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfLevel();

    [GeneratedRegex(@"\b(home|seated|tight|clicks?|clicked|locked|connected|plugged|latched|closed|holds?|torque|fast)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfClosing();

    [GeneratedRegex(@"^\s*(turn|set|put|move|switch|push|pull|bring|swing)\b|\b(before|after|when|once|until|if|never|not|then|again)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Moving();
}

/// <summary>Something that a text says and that is not so then.</summary>
/// <param name="Item">What it names.</param>
/// <param name="Sentence">The sentence.</param>
/// <param name="Action">The step that says it.</param>
/// <param name="Since">The step that has made it otherwise; null where nothing has.</param>
internal sealed record Contradiction(MachineItem Item, string Sentence, PerformedAction Action, PerformedAction? Since);
