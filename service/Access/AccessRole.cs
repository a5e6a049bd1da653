namespace WireCoach.Service.Access;

/// <summary>As whom somebody signs in on a shared service.</summary>
internal enum AccessRole
{
    /// <summary>Sees and works on every job.</summary>
    Technician,

    /// <summary>All that, and signs jobs off.</summary>
    Manager,

    /// <summary>Sees only what was opened in the same browser.</summary>
    Homeowner,

    /// <summary>As a homeowner.</summary>
    Apprentice,
}
