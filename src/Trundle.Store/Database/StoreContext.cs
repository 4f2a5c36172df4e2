using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Trundle.Store.Database;

/// <summary>The tables of one workshop's store.</summary>
internal sealed class StoreContext(DbContextOptions<StoreContext> options) : DbContext(options)
{
    public DbSet<VisitRow> Visits => Set<VisitRow>();

    public DbSet<EntryRow> Entries => Set<EntryRow>();

    public DbSet<PersonRow> People => Set<PersonRow>();

    public DbSet<CondemnedRow> Condemned => Set<CondemnedRow>();

    public DbSet<InstrumentRow> Instruments => Set<InstrumentRow>();

    public DbSet<InstrumentRecordRow> InstrumentRecords => Set<InstrumentRecordRow>();

    public DbSet<ProcedureEditionRow> ProcedureEditions => Set<ProcedureEditionRow>();

    public DbSet<PhotoRow> Photos => Set<PhotoRow>();

    public DbSet<StockItemRow> StockItems => Set<StockItemRow>();

    public DbSet<StockMoveRow> StockMoves => Set<StockMoveRow>();

    public DbSet<KeptRow> Kept => Set<KeptRow>();

    public DbSet<KeptRecordRow> KeptRecords => Set<KeptRecordRow>();

    public DbSet<AccountRow> Accounts => Set<AccountRow>();

    public DbSet<DeviceRow> Devices => Set<DeviceRow>();

    public DbSet<SignInRow> SignIns => Set<SignInRow>();

    public DbSet<InvitationRow> Invitations => Set<InvitationRow>();

    public DbSet<HostKeyRow> HostKeys => Set<HostKeyRow>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        // SQLite has no time of its own that sorts; milliseconds sort and are what a browser's clock gives.
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcMilliseconds>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<VisitRow>(visit =>
        {
            visit.ToTable("visits");
            visit.HasKey(v => v.Id);
            visit.HasIndex(v => v.Number).IsUnique();
            visit.HasIndex(v => v.HandedBackAt);
        });
        modelBuilder.Entity<EntryRow>(entry =>
        {
            entry.ToTable("entries");
            entry.HasKey(e => e.Sequence);
            entry.HasIndex(e => e.Id).IsUnique();
            entry.HasIndex(e => new { e.VisitId, e.Sequence });
            entry.HasOne<VisitRow>().WithMany().HasForeignKey(e => e.VisitId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<PersonRow>(person =>
        {
            person.ToTable("people");
            person.HasKey(p => p.Id);
            person.HasIndex(p => p.Name).IsUnique();
        });
        modelBuilder.Entity<CondemnedRow>(condemned =>
        {
            condemned.ToTable("condemned");
            condemned.HasKey(c => c.Id);
            condemned.HasIndex(c => new { c.Kind, c.Key });
            condemned.HasIndex(c => new { c.EntryId, c.Kind, c.Key }).IsUnique();
            condemned.HasOne<VisitRow>().WithMany().HasForeignKey(c => c.VisitId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<InstrumentRow>(instrument =>
        {
            instrument.ToTable("instruments");
            instrument.HasKey(i => i.Id);
        });
        modelBuilder.Entity<InstrumentRecordRow>(record =>
        {
            record.ToTable("instrument_records");
            record.HasKey(r => r.Sequence);
            record.HasIndex(r => r.Id).IsUnique();
            record.HasIndex(r => new { r.InstrumentId, r.Sequence });
            record.HasOne<InstrumentRow>().WithMany().HasForeignKey(r => r.InstrumentId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ProcedureEditionRow>(edition =>
        {
            edition.ToTable("procedure_editions");
            edition.HasKey(e => e.Number);
            edition.Property(e => e.Number).ValueGeneratedNever();
            edition.HasIndex(e => e.Id).IsUnique();
        });
        modelBuilder.Entity<PhotoRow>(photo =>
        {
            photo.ToTable("photos");
            photo.HasKey(p => p.Id);
            photo.HasIndex(p => p.VisitId);
            photo.HasOne<VisitRow>().WithMany().HasForeignKey(p => p.VisitId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<StockItemRow>(item =>
        {
            item.ToTable("stock_items");
            item.HasKey(i => i.Id);
            item.HasIndex(i => i.Key);
        });
        modelBuilder.Entity<StockMoveRow>(move =>
        {
            move.ToTable("stock_moves");
            move.HasKey(m => m.Sequence);
            move.HasIndex(m => m.Id).IsUnique();
            move.HasIndex(m => new { m.ItemId, m.Sequence });
            move.HasIndex(m => new { m.VisitId, m.Place }).IsUnique();
            move.HasOne<StockItemRow>().WithMany().HasForeignKey(m => m.ItemId).OnDelete(DeleteBehavior.Restrict);
            move.HasOne<VisitRow>().WithMany().HasForeignKey(m => m.VisitId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<KeptRow>(kept =>
        {
            kept.ToTable("kept");
            kept.HasKey(k => k.Id);
            kept.HasIndex(k => new { k.Kind, k.Number }).IsUnique();
            kept.HasOne<VisitRow>().WithMany().HasForeignKey(k => k.VisitId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<KeptRecordRow>(record =>
        {
            record.ToTable("kept_records");
            record.HasKey(r => r.Sequence);
            record.HasIndex(r => r.Id).IsUnique();
            record.HasIndex(r => new { r.KeptId, r.Sequence });
            record.HasOne<KeptRow>().WithMany().HasForeignKey(r => r.KeptId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<AccountRow>(account =>
        {
            account.ToTable("accounts");
            account.HasKey(a => a.PersonId);
            account.Property(a => a.PersonId).ValueGeneratedNever();
            account.HasOne<PersonRow>().WithOne().HasForeignKey<AccountRow>(a => a.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<DeviceRow>(device =>
        {
            device.ToTable("devices");
            device.HasKey(d => d.Id);
        });
        modelBuilder.Entity<SignInRow>(signIn =>
        {
            signIn.ToTable("sign_ins");
            signIn.HasKey(s => s.Id);
            signIn.HasIndex(s => new { s.DeviceId, s.PersonId });
            signIn.HasOne<DeviceRow>().WithMany().HasForeignKey(s => s.DeviceId).OnDelete(DeleteBehavior.Restrict);
            signIn.HasOne<PersonRow>().WithMany().HasForeignKey(s => s.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<InvitationRow>(invitation =>
        {
            invitation.ToTable("invitations");
            invitation.HasKey(i => i.Id);
            invitation.HasIndex(i => i.CodeHash).IsUnique();
            invitation.HasOne<PersonRow>().WithMany().HasForeignKey(i => i.PersonId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<HostKeyRow>(key =>
        {
            key.ToTable("host_keys");
            key.HasKey(k => k.Id);
        });
    }

    private sealed class UtcMilliseconds() : ValueConverter<DateTimeOffset, long>(
        time => time.ToUnixTimeMilliseconds(),
        milliseconds => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds));
}

/// <summary>How the tool that writes migrations makes the context.</summary>
internal sealed class StoreContextFactory : IDesignTimeDbContextFactory<StoreContext>
{
    public StoreContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<StoreContext>().UseSqlite("Data Source=design.db").Options);
}
