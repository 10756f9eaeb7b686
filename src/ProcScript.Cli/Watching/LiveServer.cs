using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Text;
using ProcScript.Cli.Reports;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Watching;

/// <summary>Serves the built packs to a browser on this machine and tells it when they were built anew.</summary>
internal sealed class LiveServer : IDisposable
{
    private const int UsualPort = 4310;
    private const int PortsTried = 20;

    private readonly string _folder;
    private readonly HttpListener _listener;
    private readonly ConcurrentDictionary<HttpListenerResponse, SemaphoreSlim> _listening = new();

    private LiveServer(string folder, HttpListener listener, int port) => (_folder, _listener, Address) = (folder, listener, AddressOf(port));

    private int _build;
    private bool _isClean = true;

    /// <summary>Where it serves.</summary>
    public string Address { get; }

    /// <summary>Begins to serve a folder.</summary>
    /// <param name="folder">The folder, as a full path.</param>
    /// <param name="port">The port; null for a usual one, or the next that is free.</param>
    /// <exception cref="UsageException">The port is taken.</exception>
    public static LiveServer Start(string folder, int? port)
    {
        for (var tried = port ?? UsualPort; ; tried++)
        {
            HttpListener listener = new();
            listener.Prefixes.Add(AddressOf(tried));
            listener.Prefixes.Add(string.Create(CultureInfo.InvariantCulture, $"http://localhost:{tried}/"));
            try
            {
                listener.Start();
                LiveServer server = new(folder, listener, tried);
                _ = server.ServeAsync();
                return server;
            }
            catch (HttpListenerException failure)
            {
                listener.Close();
                if (port is not null || tried - UsualPort >= PortsTried)
                {
                    throw new UsageException($"cannot serve at {AddressOf(tried)}: {failure.Message}. Choose another port with --port.");
                }
            }
        }
    }

    /// <summary>Has every page that is looked at loaded again.</summary>
    /// <param name="isClean">Whether the build went through, so that every pack is of the library as it is now.</param>
    public async Task AnnounceAsync(bool isClean)
    {
        _isClean = isClean;
        Interlocked.Increment(ref _build);
        foreach (var response in _listening.Keys)
        {
            await SendAsync(response, Built);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _listener.Close();

    private string Built => string.Create(CultureInfo.InvariantCulture, $"data: {_build}\n\n");

    private static string AddressOf(int port) => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/");

    private async Task ServeAsync()
    {
        while (_listener.IsListening)
        {
            try
            {
                var context = await _listener.GetContextAsync();
                _ = AnswerAsync(context);
            }
            catch (Exception failure) when (failure is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
        }
    }

    private async Task AnswerAsync(HttpListenerContext context)
    {
        var (request, response) = (context.Request, context.Response);
        try
        {
            if (request.Url!.AbsolutePath == LivePage.ChangesPath)
            {
                response.ContentType = "text/event-stream";
                response.Headers["Cache-Control"] = "no-store";
                response.SendChunked = true;
                _listening[response] = new SemaphoreSlim(1);
                await SendAsync(response, Built);
                return;
            }

            var (status, type, text) = request.HttpMethod == "GET" ? Find(Uri.UnescapeDataString(request.Url.AbsolutePath)) : (405, "text/plain", "Only GET.\n");
            var bytes = Encoding.UTF8.GetBytes(text);
            response.StatusCode = status;
            response.ContentType = $"{type}; charset=utf-8";
            response.Headers["Cache-Control"] = "no-store";
            response.ContentLength64 = bytes.Length;
            await response.OutputStream.WriteAsync(bytes);
            response.Close();
        }
        catch (Exception failure) when (failure is HttpListenerException or ObjectDisposedException or InvalidOperationException or IOException or UnauthorizedAccessException)
        {
            // Who asked has gone, or the page has.
        }
    }

    private (int Status, string Type, string Text) Find(string path)
    {
        if (path == "/")
        {
            return (200, "text/html", LivePage.Of(Index(), _build, _isClean));
        }

        var isHidden = path.Contains('\0') || path.Split('/', '\\').Any(part => part.StartsWith('.'));
        var file = isHidden ? "" : Path.GetFullPath(path.TrimStart('/'), _folder);
        if (isHidden || !LibraryFolder.Holds(_folder, file) || !File.Exists(file) || FileSort.IsSpecial(file) || RealPath.LeadsOut(_folder, file))
        {
            return (404, "text/plain", "There is no such page.\n");
        }

        var text = File.ReadAllText(file);
        return Path.GetExtension(file) switch
        {
            ".html" => (200, "text/html", LivePage.Of(text, _build, _isClean)),
            ".json" => (200, "application/json", text),
            _ => (200, "text/plain", text),
        };
    }

    /// <summary>A list of what there is.</summary>
    private string Index()
    {
        var packs = Directory.Exists(_folder)
            ? Directory.EnumerateFiles(_folder, "*.html", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(_folder, file).Replace(Path.DirectorySeparatorChar, '/'))
                .Where(file => !file.StartsWith('.'))
                .Order(StringComparer.Ordinal)
            : Enumerable.Empty<string>();
        var links = string.Concat(packs.Select(file => $"<li><a href=\"/{SourceUri.Of(file)}\">{WebUtility.HtmlEncode(file)}</a></li>\n"));
        return $"<!doctype html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><title>Work packs</title></head>\n<body>\n<h1>Work packs</h1>\n<ul>\n{links}</ul>\n</body>\n</html>\n";
    }

    private async Task SendAsync(HttpListenerResponse response, string text)
    {
        if (!_listening.TryGetValue(response, out var turn))
        {
            return;
        }

        await turn.WaitAsync();
        try
        {
            await response.OutputStream.WriteAsync(Encoding.UTF8.GetBytes(text));
            await response.OutputStream.FlushAsync();
        }
        catch (Exception failure) when (failure is HttpListenerException or ObjectDisposedException or InvalidOperationException or IOException)
        {
            // The page was closed.
            _listening.TryRemove(response, out _);
        }
        finally
        {
            turn.Release();
        }
    }
}
