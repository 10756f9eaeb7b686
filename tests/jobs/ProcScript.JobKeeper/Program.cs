using System.Globalization;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;

// A program to be killed: writes events into a journal, from one number to another, and says of each once it is safe.
var (root, job) = (args[0], args[1]);
var (first, last) = (int.Parse(args[2], CultureInfo.InvariantCulture), int.Parse(args[3], CultureInfo.InvariantCulture));
FileJobStore store = new(root);
for (var i = first; i <= last; i++)
{
    JobEvent happened = new() { Id = $"e{i}", Kind = EventKind.Note, At = DateTimeOffset.UnixEpoch.AddSeconds(i), By = "Kern", Text = new string('x', i % 200) };
    await store.AppendAsync(job, happened, CancellationToken.None);
    Console.Out.WriteLine(i);
    Console.Out.Flush();
}
