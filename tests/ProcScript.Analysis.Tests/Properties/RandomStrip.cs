using ProcScript.Analysis.States;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>Makes a valid strip at random: at each step one of the things that the naive machine lets happen.</summary>
internal static class RandomStrip
{
    public static List<Move> Walk(Machine machine, int steps, uint seed)
    {
        var random = new Random((int)seed);
        var naive = new NaiveMachine(machine);
        var walk = new List<Move>();
        for (var step = 0; step < steps; step++)
        {
            var moves = Moves(machine, naive, random).Where(move => naive.Can(move, refit: false)).ToList();
            if (moves.Count == 0)
            {
                break;
            }

            // Taking apart goes before fiddling with controls and supports.
            var opening = moves.Where(move => move.Verb is not (Verb.Set or Verb.Support)).ToList();
            var from = opening.Count > 0 && random.Next(4) > 0 ? opening : moves;
            var chosen = from[random.Next(from.Count)];
            naive.Do(chosen);
            walk.Add(chosen);
            if (CapAfter(chosen) is { } cap)
            {
                naive.Do(cap);
            }
        }

        return walk;
    }

    public static string Print(Move move) => move switch
    {
        { Verb: Verb.Loosen } => $"loosen {move.Item.Name}",
        { Item: Joint } => $"{Word(move.Verb)} {move.Value} of {move.Item.Name}",
        { Item: Control control } => $"set {control.Name} to {control.Positions[move.Value]}",
        _ => $"{Word(move.Verb)} {move.Item.Name}",
    };

    public static string Procedure(IEnumerable<string> steps, string rest = "") =>
        $"procedure p \"P\" on m {{\nstage \"S\" {{\n{string.Concat(steps.Select(step => step + "\n"))}}}\n{rest}\n}}\n";

    /// <summary>What the compiler puts in behind a step.</summary>
    public static Move? CapAfter(Move move) => move switch
    {
        { Item: Joint { Cap: not null, IsTemporary: false }, Verb: Verb.Undo or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut } =>
            new Move(Verb.Cap, move.Item, move.Value),
        { Item: Part { Cap: not null, IsTemporary: false }, Verb: Verb.Remove } => new Move(Verb.Cap, move.Item, 1),
        _ => null,
    };

    private static Verb Closing(Verb opening) => opening switch
    {
        Verb.Undo => Verb.Fasten,
        Verb.Release => Verb.Engage,
        Verb.Unplug => Verb.Plug,
        Verb.Disconnect => Verb.Connect,
        _ => Verb.Renew,
    };

    private static string Word(Verb verb) => verb.ToString().ToLowerInvariant();

    private static IEnumerable<Move> Moves(Machine machine, NaiveMachine naive, Random random)
    {
        foreach (var joint in machine.Joints)
        {
            var verb = joint.Kind.Category switch
            {
                KindCategory.Fastener => Verb.Undo,
                KindCategory.Clip => Verb.Release,
                KindCategory.Connector => Verb.Unplug,
                KindCategory.Line => Verb.Disconnect,
                _ => Verb.Cut,
            };
            if (joint.IsTemporary && naive[joint] < joint.Count)
            {
                yield return new Move(Closing(verb), joint, joint.Count - naive[joint]);
            }

            if (naive[joint] > 0)
            {
                yield return new Move(verb, joint, random.Next(4) == 0 ? random.Next(1, naive[joint] + 1) : naive[joint]);
                if (verb == Verb.Undo)
                {
                    yield return new Move(Verb.Loosen, joint, naive[joint]);
                }
            }
        }

        foreach (var part in machine.Parts)
        {
            if (part.IsTemporary)
            {
                yield return new Move(Verb.Fit, part, (int)PartPlace.Fitted);
            }

            yield return new Move(Verb.Remove, part, (int)PartPlace.Out);
            yield return new Move(Verb.Aside, part, (int)PartPlace.Aside);
            yield return new Move(Verb.Support, part);
        }

        foreach (var energy in machine.Energies)
        {
            yield return new Move(Verb.Isolate, energy);
        }

        foreach (var fluid in machine.Fluids)
        {
            yield return new Move(Verb.Empty, fluid);
        }

        foreach (var control in machine.Controls)
        {
            yield return new Move(Verb.Set, control, random.Next(control.Positions.Length));
        }
    }
}
