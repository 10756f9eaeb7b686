using System.Globalization;
using System.Text.Json;
using ProcScript.Analysis.Crews;
using ProcScript.Exact;

// What procscript asks: a problem on the standard input; a schedule on the standard output. Whoever else starts it is told what it is for.
const int Wrong = 2;

double? seconds = args is ["--limit", var said] && double.TryParse(said, NumberStyles.Float, CultureInfo.InvariantCulture, out var limit) && limit > 0 ? limit : null;
if (args.Length > 0 && seconds is null)
{
    Console.Error.WriteLine("procscript-exact takes no arguments but --limit SECONDS: 'procscript crew --exact' starts it and hands it a problem over its standard input.");
    return Wrong;
}

try
{
    using var input = Console.OpenStandardInput();
    var problem = await JsonSerializer.DeserializeAsync(input, CrewJson.Default.CrewProblem) ?? throw new JsonException("there is no problem");
    if (CrewCheck.Faults(problem).FirstOrDefault() is { } fault)
    {
        throw new JsonException(fault);
    }

    Console.Out.Write(JsonSerializer.Serialize(new ExactScheduler(seconds: seconds).Schedule(problem), CrewJson.Default.CrewSchedule));
    return 0;
}
catch (JsonException failure)
{
    Console.Error.WriteLine($"procscript-exact: this is no problem to schedule: {failure.Message}");
    return Wrong;
}
