using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Refettle.Storage.Tables;

namespace Refettle.Storage.Postgres;

/// <summary>The same tables in PostgreSQL, and the pictures that bays share, with migrations of their own.</summary>
internal sealed class PostgresContext(DbContextOptions<PostgresContext> options) : LogbookContext(options)
{
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        base.OnModelCreating(modelBuilder);
        modelBuilder.Entity<PictureRow>(picture =>
        {
            picture.ToTable("Pictures");
            picture.HasKey(row => row.Hash);
        });
    }

    public static DbContextOptions<PostgresContext> Options(string connection) =>
        new DbContextOptionsBuilder<PostgresContext>().UseNpgsql(connection).Options;
}

/// <summary>Lets the migrations tool make a context.</summary>
internal sealed class DesignPostgresContexts : IDesignTimeDbContextFactory<PostgresContext>
{
    public PostgresContext CreateDbContext(string[] args) => new(PostgresContext.Options("Host=localhost"));
}
