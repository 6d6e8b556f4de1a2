using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Refettle.Storage.Tables;

/// <summary>The tables of a logbook, as SQLite keeps them.</summary>
internal class LogbookContext(DbContextOptions options) : DbContext(options)
{
    public DbSet<EntryRow> Entries => Set<EntryRow>();

    public DbSet<DeviceRow> Devices => Set<DeviceRow>();

    public DbSet<CodeRow> Codes => Set<CodeRow>();

    public DbSet<WriterRow> Writers => Set<WriterRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<EntryRow>(entry =>
        {
            entry.HasKey(row => row.Position);
            entry.HasIndex(row => row.Id).IsUnique();
            entry.HasIndex(row => row.Car);
            entry.HasIndex(row => new { row.Car, row.Device, row.Sequence });
        });
        modelBuilder.Entity<IdentityRow>(identity =>
        {
            identity.ToTable("Identity");
            identity.HasKey(row => row.Key);
            identity.Property(row => row.Key).ValueGeneratedNever();
        });
        modelBuilder.Entity<DeviceRow>(device =>
        {
            device.HasKey(row => row.Id);
            device.HasIndex(row => row.TokenHash).IsUnique();
        });
        modelBuilder.Entity<CodeRow>().HasKey(row => row.CodeHash);
        modelBuilder.Entity<WriterRow>().HasKey(row => row.Device);
    }
}

/// <summary>Lets the migrations tool make a context.</summary>
internal sealed class DesignContexts : IDesignTimeDbContextFactory<LogbookContext>
{
    public LogbookContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<LogbookContext>().UseSqlite("Data Source=:memory:").Options);
}
