using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Makes steps of a sentence that takes something off, lets it out, moves it or switches it off.</summary>
/// <param name="reader">Where the steps go.</param>
/// <param name="act">What is asked for.</param>
/// <param name="thing">What it is done to.</param>
/// <param name="figures">The figures.</param>
/// <param name="sentence">The sentence as it was written.</param>
internal sealed partial class NoteDeed(NotesReader reader, NoteAct act, NoteObject thing, NoteFigures figures, string sentence)
{
    private const int MostWordsOfNoun = 3;

    private ItemSort _sort;
    private string _noun = "";

    private NoteNames Names => reader.Names;

    /// <summary>Adds the steps; a sentence that says too little is kept as it is.</summary>
    public void Read()
    {
        if (thing.Words.Split(' ').Length > 6)
        {
            reader.Unknown(sentence);
            return;
        }

        if (thing.Words.ToLowerInvariant() is "it" or "them" && reader.Steps is [.., { IsUnlocking: true, Unlocks: var locked }] && ItemSorts.OfWords(locked) is { } kept && ItemSorts.IsJoint(kept))
        {
            // "Press the tab on the plug and pull it off."
            thing = thing with { Words = locked, Sort = kept };
        }

        switch (act)
        {
            case NoteAct.Isolate:
                Isolate();
                break;
            case NoteAct.Undo or NoteAct.Loosen or NoteAct.Release or NoteAct.Unplug or NoteAct.Disconnect when thing.Words.Length == 0 && reader.It.Length > 0:
                OfLast();
                break;
            case NoteAct.Release when JointCovers.IsCover(DraftWords.Name(thing.Words)) && thing.Sort is null && Prise().IsMatch(sentence):
                Part("remove");
                break;
            case NoteAct.Remove when thing.Sort == ItemSort.Energy && NoteEnergies.IsSupply(thing.Words):
                Isolate();
                break;
            case NoteAct.Disconnect or NoteAct.Unplug when thing.Sort is null or ItemSort.Energy && NoteEnergies.IsSupply($"{thing.Words} {thing.Of}".Trim()):
                Isolate();
                break;
            case NoteAct.Release or NoteAct.Empty when thing.Sort == ItemSort.Energy:
                Isolate();
                break;
            case var _ when thing.Words.Length == 0 && act is not (NoteAct.Remove or NoteAct.Aside or NoteAct.Support):
                reader.Unknown(sentence);
                break;
            case NoteAct.Empty:
                Empty();
                break;
            case NoteAct.Set:
                Set();
                break;
            case NoteAct.Aside:
                Part("aside");
                break;
            case NoteAct.Support:
                Part("support");
                break;
            case NoteAct.Remove when thing.Sort is not { } sort || !ItemSorts.IsJoint(sort):
                Part("remove");
                break;
            default:
                Joint();
                break;
        }
    }

    private void Isolate()
    {
        // "Isolate the battery & lock off" locks the battery.
        var energy = thing.Words.Length == 0 && reader.LastIsolated() is { } last ? last : Names.Of(NoteEnergies.Of(thing.Words), ItemSort.Energy);
        Names.Say(energy, figures.Voltage.Length > 0 ? $"voltage {figures.Voltage}" : "");
        Names.Say(energy, figures.Time.Length > 0 ? $"wait {figures.Time}" : "");
        if (reader.Steps is [.., { Verb: "isolate", Item: var before }] && before == energy)
        {
            // "Switch off. Lock out." is one step in two sentences.
            Names.Say(energy, $"lock {DraftWords.Quoted(NotesReader.Told(sentence))}");
            return;
        }

        Names.Say(energy, $"isolate {DraftWords.Quoted(NotesReader.Told(sentence))}");
        reader.Add(new NoteStep(NotePhase.Strip, "isolate") { Item = energy, Heading = reader.TakeHeading() });
    }

    private void Empty()
    {
        // "Drain the gearbox" does not say what runs out.
        var isFluid = thing.Sort == ItemSort.Fluid;
        var fluid = Names.Of(isFluid ? thing.Words : thing.Words + " fluid", ItemSort.Fluid);
        Names.Say(fluid, figures.Volume.Length > 0 ? $"charge {figures.Volume}" : "");
        Names.Say(fluid, $"empty {DraftWords.Quoted(NotesReader.Told(sentence))}");
        reader.Add(new NoteStep(NotePhase.Strip, "empty")
        {
            Item = fluid,
            Question = isFluid ? "" : $"what is drained from the {thing.Words}?",
            Heading = reader.TakeHeading(),
        });
    }

    private void Set()
    {
        var position = DraftWords.Name(thing.Of);
        if (position.Length == 0 || thing.Of.Split(' ').Length > 3)
        {
            reader.Unknown(sentence);
            return;
        }

        reader.Add(new NoteStep(NotePhase.Strip, "set")
        {
            Item = Names.Of(thing.Words, ItemSort.Control),
            Position = NameText.IsName(position) || position is "on" or "in" ? position : position + "_position",
            Heading = reader.TakeHeading(),
        });
    }

    private void Part(string verb)
    {
        if (thing.Words.Length == 0 && reader.Steps.Count == 0)
        {
            reader.Unknown(sentence);
            return;
        }

        var part = reader.Part(thing.Words);
        Names.Say(part, figures.Mass.Length > 0 ? $"mass {figures.Mass}" : "");
        Names.Say(part, verb == "aside" ? $"aside {DraftWords.Quoted(NotesReader.Told(sentence))}" : "");
        if (verb == "remove" && reader.Steps.Any(step => step.Item == part && step.Verb == verb))
        {
            reader.Unknown(sentence);
            return;
        }

        // "Take the seat off, 4 bolts M10x30 and a clip" undoes them first.
        var joints = Chunks().Split(sentence).Skip(1).Select(chunk => Fixing(chunk, part)).OfType<NoteDeed>().ToList();
        var joint = joints.Count > 0 || figures.Kind.Length > 0 || figures.Thread.Length > 0;
        foreach (var fixing in joints)
        {
            fixing.Hardware(VerbOf(fixing._sort), $"{Names.TitleOf(part)} {fixing._noun}", fixing._sort, part);
        }

        if (joint && joints.Count == 0)
        {
            Hardware("undo", $"{Names.TitleOf(part)} bolts", ItemSort.Fastener, part);
        }

        var step = new NoteStep(NotePhase.Strip, verb) { Item = part, Heading = reader.TakeHeading() };
        Block(step, withTool: !joint);
        if (!joint)
        {
            NotesReader.More(step, thing);
        }

        if (thing.Of.Length > 0 || thing.At.Length > 0)
        {
            step.Say($"how {DraftWords.Quoted(NotesReader.Told(sentence))}");
        }

        reader.Add(step);
    }

    /// <summary>The hardware that a piece of a sentence about a part speaks of; null where it speaks of none.</summary>
    private NoteDeed? Fixing(string chunk, string part)
    {
        var own = NoteFigures.Of(chunk);
        var bare = NoteObject.Bare(own.Rest.Trim('(', ')', ' '));
        var hardware = bare.Split(' ').LastOrDefault(word => ItemSorts.OfWord(word) is { } known && ItemSorts.IsJoint(known));
        if (hardware is null && own.Kind.Length == 0 && (own.Count == 0 || (own.Head.Length == 0 && !own.Tool.EndsWith(" bit", StringComparison.Ordinal))))
        {
            return null;
        }

        var sort = hardware is null ? ItemSort.Fastener : ItemSorts.OfWord(hardware)!.Value;
        var noun = hardware is null ? own.Tool.Length > 0 ? "screws" : "bolts" : bare.EndsWith(hardware, StringComparison.Ordinal) && bare.Split(' ').Length <= MostWordsOfNoun ? bare : hardware;
        noun = noun.StartsWith(Names.TitleOf(part) + " ", StringComparison.OrdinalIgnoreCase) ? noun[(Names.TitleOf(part).Length + 1)..] : noun;
        own = own.Torque.Length == 0 ? own with { Torque = figures.Torque } : own;
        return new NoteDeed(reader, NoteAct.Undo, new NoteObject(noun, sort, "", "", ""), own, sentence) { _sort = sort, _noun = noun };
    }

    private static string VerbOf(ItemSort joint) => joint switch
    {
        ItemSort.Clip => "release",
        ItemSort.Connector => "unplug",
        ItemSort.Line => "disconnect",
        ItemSort.Bond => "cut",
        _ => "undo",
    };

    /// <summary>"Pull the radio out and unplug, 2 plugs" unplugs the radio.</summary>
    private void OfLast()
    {
        var hardware = thing.More.Split([' ', '(', ')', ',', '.'], StringSplitOptions.RemoveEmptyEntries).FirstOrDefault(word => ItemSorts.OfWord(word) is { } known && ItemSorts.IsJoint(known));
        var sort = hardware is not null ? ItemSorts.OfWord(hardware)!.Value : act switch
        {
            NoteAct.Unplug or NoteAct.Disconnect => ItemSort.Connector,
            NoteAct.Release => ItemSort.Clip,
            _ => ItemSort.Fastener,
        };
        hardware ??= sort switch { ItemSort.Connector => "plug", ItemSort.Clip => "clips", _ => "bolts" };
        Hardware(act == NoteAct.Loosen ? "loosen" : VerbOf(sort), $"{Names.TitleOf(reader.It)} {hardware}", sort, reader.It);
        reader.BeforeRemoval(reader.It);
    }

    private void Joint()
    {
        // "Undo the surround - clips only"
        var more = thing.Sort is null && act == NoteAct.Undo
            ? thing.More.Split([' ', '(', ')', ',', '.'], StringSplitOptions.RemoveEmptyEntries).FirstOrDefault(word => ItemSorts.OfWord(word) is ItemSort.Clip or ItemSort.Line or ItemSort.Connector)
            : null;
        var (verb, sort, noun) = (act, thing.Sort) switch
        {
            (NoteAct.Undo, null) when more is not null => (VerbOf(ItemSorts.OfWord(more)!.Value), ItemSorts.OfWord(more)!.Value, more),
            (NoteAct.Undo or NoteAct.Remove, ItemSort.Fastener) => ("undo", ItemSort.Fastener, ""),
            (NoteAct.Loosen, ItemSort.Line) => ("disconnect", ItemSort.Line, ""),
            (NoteAct.Loosen, ItemSort.Clip) => ("release", ItemSort.Clip, ""),
            (NoteAct.Loosen, _) => ("loosen", ItemSort.Fastener, thing.Sort == ItemSort.Fastener ? "" : "bolts"),
            (NoteAct.Cut, _) => ("cut", ItemSort.Bond, ""),
            (NoteAct.Remove or NoteAct.Undo or NoteAct.Release, ItemSort.Bond) => ("cut", ItemSort.Bond, ""),
            (_, ItemSort.Clip) => ("release", ItemSort.Clip, ""),
            (_, ItemSort.Line) => ("disconnect", ItemSort.Line, ""),
            (_, ItemSort.Connector) => ("unplug", ItemSort.Connector, ""),
            (NoteAct.Release, _) => ("release", ItemSort.Clip, "clips"),
            (NoteAct.Unplug or NoteAct.Disconnect, _) => ("unplug", ItemSort.Connector, "plug"),
            (_, _) => ("undo", ItemSort.Fastener, sentence.StartsWith("unscrew", StringComparison.OrdinalIgnoreCase) ? "screws" : "bolts"),
        };
        if (noun.Length > 0)
        {
            // "Unbolt the seat" speaks of the seat.
            Hardware(verb, $"{thing.Words} {noun}", sort, sort == ItemSort.Connector ? "" : reader.Part(thing.Words));
            if (act == NoteAct.Disconnect)
            {
                reader.Steps[^1].Question = $"is it a plug that comes off the {thing.Words}, or a hose?";
            }

            return;
        }

        var owner = thing.Of.Length > 0 ? reader.Part(thing.Of) : "";
        var isBare = thing.Words.Split(' ').Length == 1 && ItemSorts.IsJoint(sort);
        if (isBare && owner.Length == 0)
        {
            Hardware(verb, "", sort, "");
        }
        else
        {
            Hardware(verb, thing.Words.Split(' ').Length == 1 && owner.Length > 0 ? $"{Names.TitleOf(owner)} {thing.Words}" : thing.Words, sort, owner);
        }
    }

    private void Hardware(string verb, string words, ItemSort sort, string owner)
    {
        var count = figures.Count;
        var item = words.Length > 0 ? Names.Of(words, sort) : "";
        if (item.Length > 0 && figures.Count == 0 && reader.Steps.Any(step => step.Verb == verb && step.Item == item))
        {
            reader.Unknown(sentence);
            return;
        }

        // Only what is turned has a thread: any other size is told as it stands.
        var kind = sort != ItemSort.Fastener ? "" : figures.Kind.Length > 0 || figures.Thread.Length == 0 ? figures.Kind : "thread_" + DraftWords.Name(figures.Thread).TrimStart('_');
        if (kind.Length > 0 && figures.Kind.Length == 0)
        {
            reader.Kind(kind, $"{figures.Thread} bolt", [$"thread {figures.Thread}"]);
        }

        if (kind.StartsWith("screw_", StringComparison.Ordinal))
        {
            reader.Kind(kind, kind["screw_".Length..].Replace("x", " × ", StringComparison.Ordinal).Replace('_', '.') + " screw", []);
        }

        var step = new NoteStep(NotePhase.Strip, verb)
        {
            Item = item,
            Hardware = words.Length > 0 ? "" : thing.Words,
            Pieces = kind.Length > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, count)} {kind}") : "",
            Heading = reader.TakeHeading(),
            Question = figures.Head.Length > 0 ? $"is {figures.Head} mm the width of the heads?" : kind.Length > 0 && count == 0 && DraftWords.IsPlural(thing.Words) ? "how many are there?" : "",
        };
        if (words.Length > 0)
        {
            Say(step.Item);
            if (owner.Length > 0)
            {
                Names.Owns(owner, step.Item);
            }

            if (count > 0 && kind.Length == 0)
            {
                Names.Count(step.Item, count);
            }
        }
        else
        {
            step.Amount = kind.Length == 0 ? count : 0;
            step.Properties.AddRange(Said());
        }

        Block(step, withTool: true);
        if (sort == ItemSort.Connector && Lock().IsMatch(thing.More))
        {
            // "Unplug the heater, red lock back first" says how it lets go.
            if (step.Item.Length > 0)
            {
                Names.Say(step.Item, $"release {DraftWords.Quoted(NotesReader.Told(thing.More))}");
            }
            else
            {
                step.Properties.Add($"release {DraftWords.Quoted(NotesReader.Told(thing.More))}");
            }
        }
        else if (kind == figures.Kind || figures.Kind.Length == 0)
        {
            NotesReader.More(step, thing);
        }
        else
        {
            step.Say($"how {DraftWords.Quoted(NotesReader.Told(sentence))}");
        }

        reader.Add(step);
    }

    private void Say(string joint)
    {
        foreach (var property in Said())
        {
            Names.Say(joint, property);
        }
    }

    private IEnumerable<string> Said()
    {
        if (thing.At.Length > 0)
        {
            var at = reader.It.Length > 0 && thing.At.EndsWith(" it", StringComparison.OrdinalIgnoreCase) ? $"{thing.At[..^2]}the {Names.TitleOf(reader.It)}" : thing.At;
            yield return $"at {DraftWords.Quoted(at)}";
        }

        if (figures.Torque.Length > 0)
        {
            yield return $"torque {figures.Torque}";
        }
    }

    private void Block(NoteStep step, bool withTool)
    {
        if (withTool && (figures.Tool.Length > 0 || figures.Head.Length > 0))
        {
            step.Properties.Add($"tool {reader.Tool(figures.Tool.Length > 0 ? figures.Tool : $"{figures.Head} mm socket")}");
        }

        if (figures.People > 1)
        {
            step.Properties.Add(string.Create(CultureInfo.InvariantCulture, $"people {figures.People}"));
        }
    }

    [GeneratedRegex(@"\b(?:lock|lever|latch|tab|slider|catch)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Lock();

    [GeneratedRegex(@"^(?:carefully\s+|gently\s+)?(?:prise|pry|pop|lever)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Prise();

    [GeneratedRegex(@"[,;(:)]|\s+[-–—+]\s+|\s+and\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Chunks();
}
