using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Reads notes, one step a line in plain words, into steps of the language.</summary>
internal sealed partial class NotesReader
{
    private const int MostWordsOfHardware = 4;

    private readonly NoteNames _names = new();
    private readonly List<NoteStep> _steps = [];
    private readonly Dictionary<string, CatalogFacts> _catalog = new(StringComparer.Ordinal);
    private readonly List<string> _remarks = [];
    private int _headings;
    private string _heading = "";
    private string _it = "";
    private bool _isPuttingBack;

    /// <summary>The steps, in the order of the notes.</summary>
    public IReadOnlyList<NoteStep> Steps => _steps;

    /// <summary>The items.</summary>
    public NoteNames Names => _names;

    /// <summary>What is known of tools and kinds.</summary>
    public ImmutableDictionary<string, CatalogFacts> Catalog => _catalog.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The title of the machine, where the notes give one.</summary>
    public string Machine { get; private set; } = "";

    /// <summary>The title of the job, where the notes give one.</summary>
    public string Job { get; private set; } = "";

    /// <summary>Reads all lines.</summary>
    public void Read(ImmutableArray<NoteLine> lines)
    {
        _headings = lines.Count(line => line.Heads != NoteHeading.None && NoteVerbs.Of(line.Text)?.Act != NoteAct.PutBack);
        foreach (var line in lines)
        {
            if (Titled(line.Text, "machine") is { } machine)
            {
                Machine = machine;
            }
            else if ((Titled(line.Text, "job") ?? Titled(line.Text, "title") ?? Titled(line.Text, "task")) is { } job)
            {
                Job = job;
            }
            else if (line.Heads != NoteHeading.None)
            {
                Heading(line);
            }
            else if (Listing().IsMatch(line.Text))
            {
                Remark(line.Text);
            }
            else
            {
                Line(line);
            }
        }

        Finish();
        NotesEnd ending = new(_steps, _names);
        ending.NameTheRest();
        ending.ReplaceWhatTheJobSays(Job);
    }

    private static string? Titled(string line, string word) =>
        line.StartsWith(word, StringComparison.OrdinalIgnoreCase) && line[word.Length..].TrimStart() is [':', ..] rest && rest[1..].Trim() is { Length: > 0 } title ? title : null;

    private void Heading(NoteLine line)
    {
        if (NoteVerbs.Of(line.Text) is { Act: NoteAct.PutBack })
        {
            _isPuttingBack = true;
            Comment(line.Text);
            return;
        }

        _isPuttingBack = false;
        if (_steps.Count == 0 && Job.Length == 0 && (line.Heads == NoteHeading.Notes || _headings == 1))
        {
            Job = line.Text;
            return;
        }

        if (_heading.Length > 0)
        {
            // A heading above a heading.
            if (Job.Length == 0 && _steps.Count == 0)
            {
                Job = _heading;
            }
            else
            {
                Remark(_heading);
            }
        }

        _heading = line.Text;
    }

    private void Line(NoteLine line)
    {
        var sentences = line.Text.Length > NoteLine.Longest ? [(line.Text, line.Text)] : NoteSentences.Of(line.Text);
        var previous = _steps.Count;
        foreach (var (sentence, said) in sentences)
        {
            var before = _steps.Count;
            Sentence(sentence, said);
            // Hardware may have come to stand before the part that it holds, a step of the sentence before.
            foreach (var step in _steps.Skip(before - 1).Where(step => step.Said.Length == 0))
            {
                step.Said = said;
            }

            if (NoteSentences.Warning(sentence) is null)
            {
                NoteRest.Keep(this, said, line.Number, before);
                previous = before;
            }
            else
            {
                BeforeWhatItWarnsOf(Math.Min(previous, _steps.Count - 1));
            }
        }
    }

    /// <summary>"Undo the nut. CAUTION: spring behind it." warns of what stands before it on the line.</summary>
    private void BeforeWhatItWarnsOf(int first)
    {
        if (_steps.Count - 1 > first && _steps[first].Phase == NotePhase.Strip && _steps[^1] is { Phase: NotePhase.Strip } alert)
        {
            (alert.Heading, _steps[first].Heading) = (_steps[first].Heading, "");
            _steps.RemoveAt(_steps.Count - 1);
            _steps.Insert(first, alert);
        }
    }

    /// <summary>What stands under a heading without a step, and remarks behind the last step.</summary>
    private void Finish()
    {
        var left = TakeHeading();
        foreach (var remark in _remarks.Append(left).Where(one => one.Length > 0).ToList())
        {
            _steps.Add(new NoteStep(NotePhase.Refit, "") { Text = $"// {remark}" });
        }

        _remarks.Clear();
    }

    private void Sentence(string sentence, string said)
    {
        if (sentence.Length == 0)
        {
            return;
        }

        if (NoteSentences.Warning(sentence) is var (word, warning, isGuess))
        {
            Add(new NoteStep(_isPuttingBack ? NotePhase.Refit : NotePhase.Strip, "")
            {
                Text = $"{word} {DraftWords.Quoted(Told(warning))}",
                Question = isGuess ? "can it hurt somebody (caution, warning, danger), or only do damage (notice)?" : "",
                Heading = TakeHeading(),
            });
        }
        else if (sentence.Length > NoteLine.Longest)
        {
            Unknown(sentence);
        }
        else if ((NoteVerbs.Of(sentence) ?? NoteVerbs.Trailing(sentence)) is var (act, rest))
        {
            Act(act, rest, sentence);
        }
        else if (Condition().IsMatch(sentence))
        {
            Add(new NoteStep(_isPuttingBack ? NotePhase.Refit : NotePhase.Strip, "") { Text = $"{(_isPuttingBack ? "check" : "task")} {DraftWords.Quoted(Told(said))}", Heading = _isPuttingBack ? "" : TakeHeading() });
        }
        else if (Reverse().IsMatch(sentence))
        {
            Act(NoteAct.PutBack, sentence, sentence);
        }
        else if (!ToolOfLast(sentence) && !Bare(sentence))
        {
            Unknown(said);
        }
    }

    /// <summary>"Use a long extension." speaks of the step before it.</summary>
    private bool ToolOfLast(string sentence)
    {
        if (!sentence.StartsWith("use ", StringComparison.OrdinalIgnoreCase) && !sentence.StartsWith("using ", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        var figures = NoteFigures.Of(sentence);
        if (figures.Tool.Length == 0 || figures.Rest.Length > 0 || _steps is not [.., { Verb.Length: > 0 } last] || last.Properties.Exists(property => property.StartsWith("tool ", StringComparison.Ordinal)))
        {
            return false;
        }

        last.Properties.Add($"tool {Tool(figures.Tool)}");
        return true;
    }

    /// <summary>A line that only names hardware: in a list of what comes off, that is what is opened there.</summary>
    private bool Bare(string sentence)
    {
        var figures = NoteFigures.Of(sentence);
        if (_isPuttingBack)
        {
            if (figures.Torque.Length == 0 && !New().IsMatch(sentence))
            {
                return false;
            }

            PutBack(NoteObject.Read(figures.Rest), figures, sentence);
            return true;
        }

        var thing = NoteObject.Read(figures.Rest);
        if (figures.Torque.Length > 0 && _names.JointIn(sentence) is { } known && _steps.Exists(one => one.Item == known))
        {
            PutBack(thing, figures, sentence);
            return true;
        }

        if (thing.Sort is not { } sort || !ItemSorts.IsJoint(sort) || thing.Words.Split(' ').Length > MostWordsOfHardware)
        {
            return false;
        }

        var act = sort switch
        {
            ItemSort.Connector => NoteAct.Unplug,
            ItemSort.Line => NoteAct.Disconnect,
            ItemSort.Clip => NoteAct.Release,
            ItemSort.Bond => NoteAct.Cut,
            _ => NoteAct.Undo,
        };
        var before = _steps.Count;
        Act(act, sentence, sentence);
        if (_steps.Count > before && _steps[^1].Question.Length == 0)
        {
            _steps[^1].Question = "the notes name it without a verb: is this what is done with it?";
        }

        return true;
    }

    private void Act(NoteAct act, string rest, string sentence)
    {
        var figures = NoteFigures.Of(rest);
        var thing = NoteObject.Read(figures.Rest);
        act = act == NoteAct.Tend && thing.Sort == ItemSort.Clip && sentence.StartsWith("bend", StringComparison.OrdinalIgnoreCase) ? NoteAct.Release : act;
        if (act == NoteAct.PutBack)
        {
            PutBack(thing, figures, sentence);
            return;
        }

        var wasPuttingBack = _isPuttingBack;
        _isPuttingBack &= act is NoteAct.Check or NoteAct.Measure or NoteAct.Wait;
        switch (act)
        {
            case NoteAct.Clean or NoteAct.Inspect or NoteAct.Adjust when wasPuttingBack:
                _isPuttingBack = true;
                Add(new NoteStep(NotePhase.Refit, "") { Text = $"check {DraftWords.Quoted(Told(sentence))}" });
                break;
            case NoteAct.Tend or NoteAct.Unlock:
                Add(new NoteStep(NotePhase.Strip, "") { Text = $"task {DraftWords.Quoted(Told(sentence))}", IsUnlocking = act == NoteAct.Unlock, Unlocks = act == NoteAct.Unlock ? thing.Of : "", Heading = TakeHeading() });
                break;
            case NoteAct.Check or NoteAct.Measure when LastIsolated() is { } energy && NoteEnergies.IsProof(sentence):
                _names.Say(energy, $"verify {DraftWords.Quoted(Told(sentence))}");
                break;
            case NoteAct.Check or NoteAct.Measure:
                Add(new NoteStep(_isPuttingBack ? NotePhase.Refit : NotePhase.Work, "") { Text = $"check {DraftWords.Quoted(Told(sentence))}" });
                break;
            case NoteAct.Wait when LastIsolated() is { } energy && figures.Time.Length > 0:
                _names.Say(energy, $"wait {figures.Time}");
                break;
            case NoteAct.Wait:
                Add(new NoteStep(NotePhase.Strip, "")
                {
                    Text = $"task {DraftWords.Quoted(Told(sentence))}{(figures.Time.Length > 0 ? $" {{ time {figures.Time} }}" : "")}",
                    Heading = TakeHeading(),
                });
                break;
            case NoteAct.Replace or NoteAct.Clean or NoteAct.Inspect or NoteAct.Repair or NoteAct.Adjust:
                Work(act, thing, sentence);
                break;
            default:
                new NoteDeed(this, act, thing, figures, sentence).Read();
                break;
        }
    }

    private void Work(NoteAct act, NoteObject thing, string sentence)
    {
        if (thing.Words.Length == 0 || thing.Words.Split(' ').Length > 5)
        {
            Add(new NoteStep(NotePhase.Work, "") { Text = $"task {DraftWords.Quoted(Told(sentence))}", Question = "which part is worked on here?" });
            return;
        }

        var part = _names.Joint(thing.Words) ?? Part(thing.Words.StartsWith("new ", StringComparison.OrdinalIgnoreCase) ? thing.Words[4..] : thing.Words);
        if (act == NoteAct.Replace && _names.IsPart(part) && !_steps.Exists(one => one.Item == part && one.Verb == "remove"))
        {
            Add(new NoteStep(NotePhase.Strip, "remove") { Item = part, Heading = TakeHeading(), Question = "the notes only say that it is replaced: does it come off here, and what holds it?" });
        }

        var step = new NoteStep(NotePhase.Work, act.ToString().ToLower(CultureInfo.InvariantCulture))
        {
            Item = part,
        };
        More(step, thing);
        Add(step);
    }

    /// <summary>Nobody writes the way back; but a torque that notes tell there belongs to its joint.</summary>
    private void PutBack(NoteObject thing, NoteFigures figures, string sentence)
    {
        _isPuttingBack = true;
        var tightened = _names.JointIn(sentence) ?? _names.Joint(thing.Words);
        if (figures.Torque.Length > 0 && tightened is not null)
        {
            _names.Say(tightened, $"torque {figures.Torque}");
        }

        if (figures.Volume.Length > 0 && _names.OnlyFluid() is { } fluid)
        {
            _names.Say(fluid, $"charge {figures.Volume}");
        }

        Comment(sentence);
        if (figures.Torque.Length > 0 && tightened is null)
        {
            _steps[^1].Text += $"\n{DraftWriter.Question($"which joint has the {figures.Torque}?")}";
        }

        if (New().IsMatch(sentence))
        {
            _steps[^1].Text += $"\n{DraftWriter.Question("what is new each time here? Write `single use` at it, or `seals` at its joint")}";
        }
    }

    /// <summary>What is understood and needs no step of its own is kept where the way back is written.</summary>
    private void Comment(string sentence) => Add(new NoteStep(NotePhase.Refit, "") { Text = $"// {sentence}" });

    /// <summary>What is not understood is done as it is written, until somebody says what it is.</summary>
    public void Unknown(string sentence) => Add(new NoteStep(_isPuttingBack ? NotePhase.Refit : NotePhase.Strip, "")
    {
        Text = $"{(_isPuttingBack ? "check" : "task")} {DraftWords.Quoted(Told(sentence))}",
        Question = "what is done here, and to what?",
        Heading = _isPuttingBack ? "" : TakeHeading(),
    });

    /// <summary>Adds a step. What opens a lock is how the joint behind it lets go.</summary>
    public void Add(NoteStep step)
    {
        if (step.Verb is "unplug" or "disconnect" or "release" && _steps is [.., { IsUnlocking: true } unlocking])
        {
            if (step.Item.Length > 0)
            {
                _names.Say(step.Item, "release " + unlocking.Text["task ".Length..]);
            }
            else
            {
                step.Say("release " + unlocking.Text["task ".Length..]);
            }

            step.Remarks.AddRange(unlocking.Remarks);
            step.Heading = step.Heading.Length > 0 ? step.Heading : unlocking.Heading;
            _steps.Remove(unlocking);
        }

        if (step.Phase == NotePhase.Work && TakeHeading() is { Length: > 0 } heading)
        {
            Remark(heading);
        }

        if (step.Phase != NotePhase.Strip && step.Heading.Length > 0)
        {
            // Only the strip has stages of its own.
            Remark(step.Heading);
            step.Heading = "";
        }

        step.Remarks.AddRange(_remarks);
        _remarks.Clear();
        _steps.Add(step);
    }

    /// <summary>Has the last step go before the one that takes its part off: who pulls a radio out unplugs it on the way.</summary>
    public void BeforeRemoval(string part)
    {
        if (_steps is [.., { Verb: "remove" or "aside" } removal, var last] && removal.Item == part)
        {
            (last.Heading, removal.Heading) = (removal.Heading, last.Heading);
            (_steps[^2], _steps[^1]) = (last, removal);
        }
    }

    /// <summary>Keeps what belongs to no step as a comment before the next one.</summary>
    public void Remark(string text) => _remarks.Add(text);

    /// <summary>The heading above, for the first step below it.</summary>
    public string TakeHeading()
    {
        var heading = _heading;
        _heading = "";
        return heading;
    }

    /// <summary>The part that was spoken of last; empty at the beginning.</summary>
    public string It => _it;

    /// <summary>The part that words stand for; <c>it</c> is the one that was spoken of last.</summary>
    public string Part(string words)
    {
        var name = words.ToLowerInvariant() is "it" or "them" or "this" or "that" or "" && _it.Length > 0 ? _it : _names.Of(words, ItemSort.Part);
        _it = name;
        return name;
    }

    /// <summary>The tool that words stand for.</summary>
    public string Tool(string words)
    {
        var (name, facts) = NoteTools.Of(words);
        _catalog.TryAdd(name, facts);
        return name;
    }

    /// <summary>What a tool is called.</summary>
    public string ToolTitle(string name) => _catalog.TryGetValue(name, out var facts) ? facts.Title : "";

    /// <summary>Says what a kind is called, where its name does not tell.</summary>
    public void Kind(string name, string title, ImmutableArray<string> properties) => _catalog.TryAdd(name, new CatalogFacts(title, properties));

    /// <summary>What a sentence says beside its step goes onto the card with it.</summary>
    public static void More(NoteStep step, NoteObject thing)
    {
        if (NoteRest.Tells(thing.More))
        {
            step.Say($"how {DraftWords.Quoted(Told(thing.More))}");
        }
    }

    /// <summary>A sentence as it is printed.</summary>
    public static string Told(string sentence)
    {
        var told = DraftWords.Capital(sentence.Trim());
        return told.Length > 0 && told[^1] is '.' or '!' or '?' ? told : told + ".";
    }

    /// <summary>The energy that the step before isolates; null where it isolates none.</summary>
    public string? LastIsolated() => _steps is [.., { Verb: "isolate", Item: var energy }] ? energy : null;

    [GeneratedRegex(@"^(?:special\s+)?(?:tools?|parts?|you(?:'ll)?\s+need|materials?|consumables?)\b[^:]{0,20}:", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Listing();

    [GeneratedRegex(@"^(?:if|when|in case|unless|there (?:is|are))\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Condition();

    [GeneratedRegex(@"\b(?:reverse|reversed|other way round)\W*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Reverse();

    [GeneratedRegex(@"\bnew\s+(?:[\w-]+\s+){0,2}(?:bolts?|nuts?|washers?|gaskets?|seals?|o-?rings?|clips?|pins?|screws?|split pins?|cotters?)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex New();
}
