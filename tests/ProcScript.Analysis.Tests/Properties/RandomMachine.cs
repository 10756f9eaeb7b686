using System.Globalization;
using System.Text;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>Makes valid machines at random: part trees, joints with covers, things behind each other, energies, fluids, controls.</summary>
internal sealed class RandomMachine
{
    public const string Catalog = """
        tool key "key"
        fastener bolt "bolt" { drive key  torque 5 N.m }
        clip pin "pin"
        clip cap "cap"
        connector plug_2 "plug"
        tool stopper "stopper"
        line hose "hose" { cap 2 stopper }
        bond glue "glue"
        clip split_pin "split pin"
        bond wire "locking wire"

        """;

    private readonly Random _random;
    private readonly List<(int Parent, List<string> Lines)> _parts = [];
    private readonly int _energies;
    private readonly int _fluids;
    private readonly int _controls;
    private readonly RandomWarnings? _warnings;
    private readonly Random _extras;
    private int _joints;

    private RandomMachine(int size, uint seed, bool asymmetric, bool warned, bool choices)
    {
        _random = new Random((int)seed);
        _extras = new Random((int)seed ^ 0x2F3B);
        _warnings = warned ? new RandomWarnings(seed) : null;
        (Asymmetric, Choices) = (asymmetric, choices);
        (_energies, _fluids, _controls) = (_random.Next(3), _random.Next(2), _random.Next(3));
        for (var part = 0; part < size; part++)
        {
            _parts.Add((part > 0 && Chance(0.35) ? _random.Next(part) : -1, []));
            Fill(part);
        }
    }

    /// <summary>Whether conditions may bind one way only.</summary>
    private bool Asymmetric { get; }

    /// <summary>Whether a condition may be a choice.</summary>
    private bool Choices { get; }

    /// <summary>The declarations right in the machine, in any order the same machine.</summary>
    /// <param name="size">How many parts.</param>
    /// <param name="seed">Where the dice begin.</param>
    /// <param name="asymmetric">Whether conditions may bind one way only.</param>
    /// <param name="warned">Whether items have alerts and hazard marks, and controls need what they let out; the machine is the same but for that.</param>
    /// <param name="choices">Whether conditions may be choices.</param>
    public static IReadOnlyList<string> Declarations(int size, uint seed, bool asymmetric = false, bool warned = false, bool choices = true)
    {
        var machine = new RandomMachine(size, seed, asymmetric, warned, choices);
        return [.. machine.Services(), .. Enumerable.Range(0, size).Where(part => machine._parts[part].Parent < 0).Select(machine.Print)];
    }

    public static string Text(IEnumerable<string> declarations) => $"{Catalog}machine m \"M\" {{\n{string.Concat(declarations)}}}\n";

    private bool Chance(double chance) => _random.NextDouble() < chance;

    private IEnumerable<string> Services()
    {
        for (var i = 0; i < _energies; i++)
        {
            yield return $"energy e{i} \"e{i}\" {{ isolate \"Off.\" restore \"On.\"{Maybe(0.3, Control)}{(i > 0 && Chance(0.4) ? " after e0" : "")}{Warnings()} }}\n";
        }

        for (var i = 0; i < _fluids; i++)
        {
            yield return $"fluid f{i} \"f{i}\" {{ empty \"Out.\" fill \"In.\"{Maybe(0.3, Control)}{Warnings()} }}\n";
        }

        for (var i = 0; i < _controls; i++)
        {
            var needs = _energies > 0 && _warnings?.IsPowered() == true ? " needs e0 live" : "";
            yield return $"control c{i} \"c{i}\" {{ a, b, c{needs}{Warnings(isControl: true)} }}\n";
        }
    }

    private string Maybe(double chance, Func<string?> condition) =>
        Chance(chance) && condition() is { } text ? $" {(Asymmetric && Chance(0.5) ? Chance(0.5) ? "strip " : "refit " : "")}needs {text}" : "";

    private string Warnings(bool isControl = false) => _warnings?.Next(isControl) ?? "";

    /// <summary>Now and then a second part that will do as well.</summary>
    private string Or(int part, int front) => Choices && Chance(0.3) && Unrelated(part) is { } other && other != front ? $" or p{other}" : "";

    private string? Control() => _controls == 0 ? null : $"c{_random.Next(_controls)} at {"abc"[_random.Next(3)]}";

    /// <summary>A condition; now and then a choice of two.</summary>
    private string? Condition(int part) => SingleCondition(part) is { } first
        ? Choices && Chance(0.25) && SingleCondition(part) is { } second && second != first ? $"{first} or {second}" : first
        : null;

    private string? SingleCondition(int part) => _random.Next(4) switch
    {
        0 => Control(),
        1 => $"p{_random.Next(part + 1)} supported",
        2 when _energies > 0 => $"e{_random.Next(_energies)} isolated",
        3 when Unrelated(part) is { } other => $"p{other} {(_extras.Next(3) == 0 ? "fitted" : "out")}",
        _ => null,
    };

    /// <summary>An earlier part that neither lies in this one nor holds it.</summary>
    private int? Unrelated(int part)
    {
        var others = Enumerable.Range(0, part).Where(other => !Around(part).Contains(other)).ToList();
        return others.Count == 0 ? null : others[_random.Next(others.Count)];
    }

    private IEnumerable<int> Around(int part)
    {
        for (; part >= 0; part = _parts[part].Parent)
        {
            yield return part;
        }
    }

    private void Fill(int part)
    {
        var lines = _parts[part].Lines;
        var goesAside = Chance(0.4);
        if (Chance(0.45) && Unrelated(part) is { } front)
        {
            lines.Add($"behind p{front}{Or(part, front)}");
        }

        if (Chance(0.2) && Unrelated(part) is { } inTheWay)
        {
            lines.Add($"way behind p{inTheWay}{Or(part, inTheWay)}");
        }

        if (Chance(0.15) && Condition(part) is { } condition)
        {
            lines.Add($"way needs {condition}");
        }

        if (Chance(0.25))
        {
            lines.Add(Maybe(1, () => Condition(part)));
        }

        var ties = new List<string>();
        for (var joints = _random.Next(3); joints > 0; joints--)
        {
            lines.Add(Joint(part, goesAside, ties));
        }

        lines.Add(Warnings());
        if (goesAside)
        {
            lines.Add($"aside \"Tilt.\"{(ties.Count > 0 && Chance(0.7) ? $" needs {ties[0]}{(Choices && ties.Count > 1 && Chance(0.4) ? $" or {ties[1]}" : "")}" : "")}");
        }

        // Dice of their own, so that the machine is the same but for that.
        if (_extras.NextDouble() < 0.2)
        {
            lines.Add("temporary");
        }
        else if (_extras.NextDouble() < 0.2)
        {
            lines.Add("cap 1 stopper");
        }
    }

    private string Joint(int part, bool goesAside, List<string> ties)
    {
        var name = $"j{_joints++}";
        var end = Chance(0.25) ? Unrelated(part) : null;
        var to = end is null ? "" : $" to p{end}";
        var behind = Chance(0.3) && Unrelated(part) is { } front && front != end ? $" behind p{front}{Or(part, front)}" : "";
        var self = goesAside && Chance(0.4) ? $" behind p{part}" : "";
        var needs = Maybe(0.2, () => Condition(part));
        var over = (_joints % 4) switch
        {
            0 => "locked by {0} split_pin",
            1 => "locked by {0} wire",
            _ => "covered by {0} cap",
        };
        var cover = Chance(0.25) ? $" {string.Format(CultureInfo.InvariantCulture, over, _random.Next(1, 3))} as {name}_cap{_warnings?.Block()}" : "";
        needs += Warnings();
        switch (_random.Next(5))
        {
            case 0 when _energies > 0:
                return $"wired by 1 plug_2 as {name} {{{to} on e{_random.Next(_energies)}{behind}{self}{needs} }}";
            case 1 when _fluids > 0:
                return $"piped by 2 hose as {name} {{{to} carries f0{behind}{self}{needs} }}";
            case 2:
                ties.Add(name);
                return $"held by {_random.Next(1, 4)} bolt as {name} {{{to}{behind}{needs}{cover} }}";
            case 3:
                return $"held by 1 glue as {name} {{{to}{behind}{self}{needs} }}";
            default:
                ties.Add(name);
                return $"held by {_random.Next(1, 4)} pin as {name} {{{to}{behind}{needs} }}";
        }
    }

    private string Print(int part)
    {
        var text = new StringBuilder($"part p{part} \"p{part}\" {{\n");
        foreach (var line in _parts[part].Lines)
        {
            text.Append(line).Append('\n');
        }

        for (var child = part + 1; child < _parts.Count; child++)
        {
            if (_parts[child].Parent == part)
            {
                text.Append(Print(child));
            }
        }

        return text.Append("}\n").ToString();
    }
}
