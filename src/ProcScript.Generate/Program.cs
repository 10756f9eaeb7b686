using System.CommandLine;
using ProcScript.Generate;
using ProcScript.Generate.Rules;
using ProcScript.Generate.Schema;
using ProcScript.Generate.Settings;
using ProcScript.Generate.TextMate;
using ProcScript.Generate.TreeSitter;

IReadOnlyList<IGenerator> generators =
[
    new ParserGenerator(), new RuleListGenerator(), new RuleTableGenerator(), new SettingsReferenceGenerator(), new SettingsSchemaGenerator(),
    new ModelSchemaGenerator(), new PlanSchemaGenerator(), new CrewSchemaGenerator(), new ReportSchemaGenerator(), new ChangeSchemaGenerator(),
    new AnswerSchemaGenerator(), new JobSchemaGenerator(), new TextMateGenerator(), new TreeSitterGenerator(), new ManualGenerator(),
];

Option<bool> check = new("--check") { Description = "Write nothing; fail when a generated file differs from the repository's." };
Option<string[]> only = new("--only") { Description = "Run these generators and no others." };
Option<string[]> skip = new("--skip") { Description = "Leave these generators out." };
foreach (var option in new[] { only, skip })
{
    option.AcceptOnlyFromAmong([.. generators.Select(generator => generator.Name)]);
}

RootCommand root = new("Regenerates every generated file of the repository.") { check, only, skip };
root.SetAction(parsed =>
{
    var wanted = parsed.GetValue(only) ?? [];
    var unwanted = parsed.GetValue(skip) ?? [];
    var chosen = generators.Where(generator =>
        (wanted.Length == 0 || wanted.Contains(generator.Name)) && !unwanted.Contains(generator.Name));
    return new GenerateRun(RepositoryRoot.Find(), parsed.GetValue(check)).Run(chosen);
});
return root.Parse(args).Invoke();
