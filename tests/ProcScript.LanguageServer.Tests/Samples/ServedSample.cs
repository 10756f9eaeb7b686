using ProcScript.LanguageServer.Tests.Clients;

namespace ProcScript.LanguageServer.Tests.Samples;

/// <summary>The sample library with a server for all the tests of a class.</summary>
public sealed class ServedSample : IAsyncLifetime
{
    internal TemporaryLibrary Library { get; } = Sample.Library();

    internal EditorClient Client { get; private set; } = null!;

    internal EditorDocument Job { get; private set; } = null!;

    internal EditorDocument Machine { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Client = await EditorClient.StartAsync(Library.Path);
        Job = EditorDocument.Open(Client, EditorClient.UriOf(Library["fan/motor.proc"]), Sample.Job);
        Machine = EditorDocument.Open(Client, EditorClient.UriOf(Library["fan/machine.proc"]), Sample.Machine);
    }

    public async ValueTask DisposeAsync()
    {
        await Client.DisposeAsync();
        Library.Dispose();
    }
}
