using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>Alerts and hazard marks at random, with dice of their own so that the machine stays as it is. No two alerts read the same.</summary>
internal sealed class RandomWarnings(uint seed)
{
    private static readonly string[] Words = ["danger", "warning", "caution", "notice"];

    private readonly Random _random = new((int)~seed);
    private int _count;

    /// <summary>What stands in the block of an item, often nothing.</summary>
    public string Next(bool isControl)
    {
        var text = "";
        for (var alerts = Math.Max(0, _random.Next(4) - 1); alerts > 0; alerts--)
        {
            text += $" {Alert($"item {_count}")}";
        }

        return isControl || _random.Next(3) > 0 ? text : $"{text} hazard {HazardWords.All[_random.Next(HazardWords.All.Length)]}";
    }

    /// <summary>The block of a cover.</summary>
    public string Block() => Next(isControl: false) is { Length: > 0 } text ? $" {{{text} }}" : "";

    /// <summary>An alert, with a way that it stands or without.</summary>
    public string Alert(string text)
    {
        _count++;
        return $"{(_random.Next(3) > 0 ? "" : _random.Next(2) == 0 ? "strip " : "refit ")}{Words[_random.Next(Words.Length)]} \"{text}.\"";
    }

    /// <summary>Whether a control works only with power.</summary>
    public bool IsPowered() => _random.Next(3) == 0;
}
