using System.CommandLine;
using System.Globalization;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The option <c>--today</c>: the day by which allowances run out, so that a check can be made again as it was.</summary>
internal sealed class TodayOption
{
    private readonly Option<DateOnly?> _today = new("--today")
    {
        Description = "The day of the check, as year, month and day, after which allowances with an earlier last day are over.",
        HelpName = "DATE",
        CustomParser = result =>
        {
            if (DateOnly.TryParseExact(result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                return day;
            }

            result.AddError($"'{result.Tokens[0].Value}' is no day: write year, month and day, such as 2027-03-01.");
            return null;
        },
    };

    /// <summary>Adds it to a command.</summary>
    public void AddTo(Command command) => command.Add(_today);

    /// <summary>The choice of settings with what is asked for.</summary>
    public SettingsRequest Read(ParseResult parsed, SettingsRequest settings) => settings with { Today = parsed.GetValue(_today) };
}
