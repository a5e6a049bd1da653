using WireCoach.Knowledge;
using WireCoach.Service.Access;
using WireCoach.Service.Hosting;
using WireCoach.Service.Observing;
using WireCoach.Service.Phrasing;
using WireCoach.Service.Sessions;

try
{
    if (await Commands.Run(args) is { } done)
    {
        return done;
    }

    var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = Installed.Folder });
    var data = DataFolder.Of(builder.Configuration);
    var sharing = Sharing.Read(builder.Configuration, new AccessCodes(data.Path));
    if (sharing is not null || string.IsNullOrEmpty(builder.Configuration["urls"]))
    {
        builder.WebHost.UseUrls(sharing?.Address.ToString() ?? "http://127.0.0.1:5187");
    }

    var folder = builder.Configuration["Knowledge:Folder"] ?? KnowledgeFolder.Beside;
    var knowledge = Task.Run(() => KnowledgeFolder.Load(folder)); // beside the rest: it is half of the start
    builder.AddLogging(data.Path);
    builder.AddWeb(data.Path, sharing);
    builder.Services.AddRules(knowledge);
    builder.Services.AddSessions(data.Path, builder.Configuration[DataFolder.Postgres]);
    builder.Services.AddPhrasing(builder.Configuration);
    builder.Services.AddObserving(builder.Configuration);
    builder.Services.AddSingleton(data).AddSingleton(RetentionSetting.Of(builder.Configuration));

    await using var app = builder.Build();
    app.UseGuards();
    app.MapEverything();
    _ = app.Services.GetRequiredService<ISessionStore>(); // a folder that cannot be used stops the start
    await knowledge;
    await app.StartAsync();
    Console.WriteLine($"WireCoach listens on {string.Join(", ", app.Urls)} and keeps its sessions in {(string.IsNullOrWhiteSpace(builder.Configuration[DataFolder.Postgres]) ? data.Path : "PostgreSQL")}");
    await app.WaitForShutdownAsync();
    return 0;
}
catch (Exception wrong) when (StartFailure.Sentence(wrong) is { } sentence)
{
    await Console.Error.WriteLineAsync(sentence);
    return 1;
}

namespace WireCoach.Service
{
    /// <summary>The entry point, named so that tests can start the service in process.</summary>
    internal sealed partial class Program;
}
