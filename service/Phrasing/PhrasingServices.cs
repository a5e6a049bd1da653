using WireCoach.Rules.Reference;

namespace WireCoach.Service.Phrasing;

/// <summary>What the optional model is made of.</summary>
internal static class PhrasingServices
{
    /// <exception cref="PhrasingSettingsException">What is configured cannot be used.</exception>
    public static void AddPhrasing(this IServiceCollection services, IConfiguration configuration)
    {
        if (PhrasingSettings.Of(configuration) is { } settings)
        {
            services.AddSingleton(settings);
        }

        services
            .AddSingleton(provider => new Guard(provider.GetRequiredService<TradeKnowledge>().Phrasing))
            .AddSingleton<Tally>()
            .AddSingleton<Typist>();
    }
}
