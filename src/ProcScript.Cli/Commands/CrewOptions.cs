using System.CommandLine;
using ProcScript.Analysis.Crews;
using ProcScript.Cli.Crews;

namespace ProcScript.Cli.Commands;

/// <summary>The options that say who works, the same for every command that asks.</summary>
/// <param name="usual">How many people, where nothing is said; null for nobody in particular.</param>
internal sealed class CrewOptions(int? usual)
{
    private const int Most = 12;

    private readonly Option<int?> _people = new("--people")
    {
        Description = usual is null ? "Say at each step who does it, for a crew of N." : $"How many people there are; {usual} where nothing is said.",
        HelpName = "N",
    };

    private readonly Option<string[]> _certified = new("--certified")
    {
        Description = "How many of them hold the certificates that steps ask for, or who holds one of them: N, NAME=N or NAME=A+B; all where nothing is said.",
        HelpName = "HOLDERS",
    };

    private readonly Option<bool> _exact = new("--exact") { Description = $"Prove that no order is quicker; needs {OutsideScheduler.Name}." };

    private readonly Option<double?> _limit = new("--time-limit")
    {
        Description = "How many seconds --exact may search for each number of people; then it says how much quicker an order might be.",
        HelpName = "SECONDS",
    };

    /// <summary>Adds them to a command.</summary>
    /// <param name="command">The command.</param>
    /// <param name="names">What is named in its library.</param>
    public void AddTo(Command command, LibraryNames names)
    {
        names.Complete(_certified, LibraryNames.Holders);
        _people.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() is < 1 or > Most)
            {
                result.AddError($"--people takes a number from 1 to {Most}.");
            }
        });
        _certified.Validators.Add(result =>
        {
            foreach (var said in result.GetValueOrDefault<string[]>() ?? [])
            {
                if (CertifiedPeople.Read(said, Most) is null)
                {
                    result.AddError($"--certified {said}: takes a number from 1 up (without anybody certified such a job cannot be done), NAME=N, or NAME=A+B with the letters of those who hold it.");
                }
            }
        });
        _limit.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<double?>() is not (> 0 and <= 86_400))
            {
                result.AddError("--time-limit takes a number of seconds, up to 86400.");
            }
        });
        command.Validators.Add(result =>
        {
            if (result.GetResult(_limit) is not null && !result.GetValue(_exact))
            {
                result.AddError("--time-limit goes with --exact: without it a plan takes a moment.");
            }
        });
        command.Add(_people);
        command.Add(_certified);
        command.Add(_exact);
        command.Add(_limit);
    }

    /// <summary>How many people there are; null for nobody in particular.</summary>
    public CrewSize? Size(ParseResult parsed) => (parsed.GetValue(_people) ?? usual) is { } people
        ? CertifiedPeople.Of(people, [.. (parsed.GetValue(_certified) ?? []).Select(said => CertifiedPeople.Read(said, Most)).OfType<CertifiedPeople>()])
        : null;

    /// <summary>How long an exact plan may be searched for, in seconds; null for the usual limit.</summary>
    public double? Seconds(ParseResult parsed) => parsed.GetValue(_limit);

    /// <summary>Whether an exact plan is asked for.</summary>
    public bool IsExact(ParseResult parsed) => parsed.GetValue(_exact);
}
