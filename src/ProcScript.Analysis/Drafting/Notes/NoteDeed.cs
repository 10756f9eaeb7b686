using System.Globalization;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Makes steps of a sentence that takes something off, lets it out, moves it or switches it off.</summary>
/// <param name="reader">Where the steps go.</param>
/// <param name="act">What is asked for.</param>
/// <param name="thing">What it is done to.</param>
/// <param name="figures">The figures.</param>
/// <param name="sentence">The sentence as it was written.</param>
internal sealed class NoteDeed(NotesReader reader, NoteAct act, NoteObject thing, NoteFigures figures, string sentence)
{
    private NoteNames Names => reader.Names;

    /// <summary>Adds the steps; a sentence that says too little is kept as it is.</summary>
    public void Read()
    {
        if (thing.Words.Split(' ').Length > 6)
        {
            reader.Unknown(sentence);
            return;
        }

        switch (act)
        {
            case NoteAct.Isolate:
                Isolate();
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
        var hardware = thing.More.Split(' ').Select(word => word.Trim('.', ',', '(', ')')).FirstOrDefault(word => ItemSorts.OfWord(word) is { } sort && ItemSorts.IsJoint(sort));
        var joint = figures.Kind.Length > 0 || figures.Thread.Length > 0 || (figures.Count > 0 && (hardware is not null || figures.Head.Length > 0 || figures.Tool.EndsWith(" bit", StringComparison.Ordinal)));
        if (joint)
        {
            // "Take the seat off, 4 bolts M10x30" undoes them first.
            var sort = hardware is null ? ItemSort.Fastener : ItemSorts.OfWord(hardware)!.Value;
            Hardware(VerbOf(sort), $"{Names.TitleOf(part)} {hardware ?? (figures.Tool.Length > 0 ? "screws" : "bolts")}", sort, part);
        }

        var step = new NoteStep(NotePhase.Strip, verb) { Item = part, Heading = reader.TakeHeading() };
        Block(step, withTool: !joint);
        if (!joint)
        {
            NotesReader.More(step, thing);
        }

        if (thing.Of.Length > 0 || thing.At.Length > 0)
        {
            step.Properties.Add($"how {DraftWords.Quoted(NotesReader.Told(sentence))}");
        }

        reader.Add(step);
    }

    private static string VerbOf(ItemSort joint) => joint switch
    {
        ItemSort.Clip => "release",
        ItemSort.Connector => "unplug",
        ItemSort.Line => "disconnect",
        ItemSort.Bond => "cut",
        _ => "undo",
    };

    private void Joint()
    {
        var (verb, sort, noun) = (act, thing.Sort) switch
        {
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
        var isBare = thing.Words.Split(' ').Length == 1 && sort is ItemSort.Fastener or ItemSort.Clip or ItemSort.Bond;
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
            Item = words.Length > 0 ? Names.Of(words, sort) : "",
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
        if (kind == figures.Kind || figures.Kind.Length == 0)
        {
            NotesReader.More(step, thing);
        }
        else
        {
            step.Properties.Add($"how {DraftWords.Quoted(NotesReader.Told(sentence))}");
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
            yield return $"at {DraftWords.Quoted(thing.At)}";
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
}
