using System.CommandLine;
using ProcScript.Analysis;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>explain</c>.</summary>
internal static class ExplainCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        ColourOption colour = new();
        Argument<string?> rule = new("RULE")
        {
            Description = "The code or the name of a rule; without it, all rules are listed.",
            HelpName = "RULE",
            Arity = ArgumentArity.ZeroOrOne,
        };
        rule.CompletionSources.Add(_ => RuleCatalog.All.SelectMany(known => new[] { known.Info.Code, known.Info.Name }));
        VerbCommand command = new("explain", "Says what a finding means, why it matters and how to fix it.")
        {
            Examples =
            [
                ("procscript explain PRC3001", "Explain a rule by its code."),
                ("procscript explain removed-while-held", "Explain a rule by its name."),
                ("procscript explain", "List all rules."),
            ],
        };
        command.Add(rule);
        colour.AddTo(command);
        command.SetAction(parsed => (int)ExplainVerb.Run(parsed.GetValue(rule), colour.Read(parsed), around));
        return command;
    }
}
