using System.Globalization;
using ProcScript.Fuzz.Inputs;

namespace ProcScript.Fuzz;

/// <summary>What a run is asked for.</summary>
internal sealed record FuzzOptions
{
    /// <summary>How long it runs.</summary>
    public TimeSpan Time { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>How many inputs it makes at the most.</summary>
    public long Inputs { get; init; } = long.MaxValue;

    /// <summary>What the inputs follow from.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>The number of the first input.</summary>
    public long From { get; init; }

    /// <summary>The sorts of inputs.</summary>
    public IReadOnlyList<InputSort> Sorts { get; init; } = InputSort.All;

    /// <summary>Where inputs that break something are written.</summary>
    public string Keep { get; init; } = Path.Combine(Path.GetTempPath(), "procscript-fuzz");

    /// <summary>Reads the arguments; null, and a word about it, where they are no good.</summary>
    public static FuzzOptions? Parse(string[] args)
    {
        var options = new FuzzOptions();
        for (var at = 0; at < args.Length; at += 2)
        {
            var value = at + 1 < args.Length ? args[at + 1] : "";
            var isNumber = long.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number);
            var sorts = InputSort.All.Where(sort => sort.Name == value).ToList();
            var next = args[at] switch
            {
                "--seconds" when isNumber => options with { Time = TimeSpan.FromSeconds(number) },
                "--inputs" when isNumber => options with { Inputs = number, Time = TimeSpan.MaxValue },
                "--seed" when isNumber && number <= int.MaxValue => options with { Seed = (int)number },
                "--from" when isNumber => options with { From = number },
                "--sort" when sorts.Count > 0 => options with { Sorts = sorts },
                "--keep" when value.Length > 0 => options with { Keep = value },
                _ => null,
            };
            if (next is null)
            {
                Console.Error.WriteLine($"'{args[at]} {value}' is not understood. There are --seconds, --inputs, --seed and --from with a number, --keep with a folder, and --sort with one of {string.Join(", ", InputSort.All.Select(sort => sort.Name))}.");
                return null;
            }

            options = next;
        }

        return options;
    }
}
