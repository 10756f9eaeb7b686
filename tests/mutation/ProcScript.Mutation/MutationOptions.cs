using System.Globalization;

namespace ProcScript.Mutation;

/// <summary>What a run is asked for.</summary>
internal sealed record MutationOptions
{
    /// <summary>The folders of the room whose code is changed.</summary>
    public IReadOnlyList<string> Folders { get; init; } = ["Actions", "Needs", "Refitting", "Proving", "Stripping", "States"];

    /// <summary>How many mutants are drawn; 0 for all.</summary>
    public int Sample { get; init; } = 300;

    /// <summary>What they are drawn by.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>The numbers of the only mutants that are tried; empty for those that are drawn.</summary>
    public IReadOnlyList<int> Only { get; init; } = [];

    /// <summary>A test that takes longer is left out, in seconds.</summary>
    public double Longest { get; init; } = 1.5;

    /// <summary>How long the tests may usually take that a mutant is tried by, all together, in seconds.</summary>
    public double Each { get; init; } = 30;

    /// <summary>The names of the only test classes that try them; empty for all.</summary>
    public IReadOnlyList<string> Tests { get; init; } = [];

    /// <summary>Where the report is written; null for the console alone.</summary>
    public string? Report { get; init; }

    /// <summary>Whether all mutants are told and none is tried.</summary>
    public bool IsList { get; init; }

    /// <summary>Reads the arguments; null, with a word about why, where they cannot be understood.</summary>
    public static MutationOptions? Parse(string[] args)
    {
        if (args is ["--list"])
        {
            return new MutationOptions { IsList = true };
        }

        MutationOptions options = new();
        for (var i = 0; i < args.Length; i += 2)
        {
            var value = i + 1 < args.Length ? args[i + 1] : "";
            var read = (args[i], value) switch
            {
                ("--folders", { Length: > 0 }) => options with { Folders = value.Split(',') },
                ("--sample", _) when Number(value) is { } number => options with { Sample = number },
                ("--seed", _) when Number(value) is { } number => options with { Seed = number },
                ("--only", { Length: > 0 }) when value.Split(',').All(one => Number(one) is not null) => options with { Only = [.. value.Split(',').Select(one => Number(one)!.Value)] },
                ("--longest", _) when double.TryParse(value, CultureInfo.InvariantCulture, out var seconds) => options with { Longest = seconds },
                ("--each", _) when double.TryParse(value, CultureInfo.InvariantCulture, out var seconds) => options with { Each = seconds },
                ("--tests", { Length: > 0 }) => options with { Tests = value.Split(',') },
                ("--report", { Length: > 0 }) => options with { Report = value },
                _ => null,
            };
            if (read is null)
            {
                Console.Error.WriteLine($"'{args[i]} {value}' is not understood: see tests/mutation/ProcScript.Mutation/Program.cs");
                return null;
            }

            options = read;
        }

        return options;
    }

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
