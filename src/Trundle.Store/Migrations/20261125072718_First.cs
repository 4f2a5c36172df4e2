using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trundle.Store.Migrations
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "host_keys",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Xml = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_host_keys", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Role = table.Column<string>(type: "TEXT", nullable: false),
                    Pressure = table.Column<string>(type: "TEXT", nullable: false),
                    Depth = table.Column<string>(type: "TEXT", nullable: false),
                    Torque = table.Column<string>(type: "TEXT", nullable: false),
                    Mass = table.Column<string>(type: "TEXT", nullable: false),
                    Left = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "visits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<string>(type: "TEXT", nullable: false),
                    OpenedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    OpenedBy = table.Column<string>(type: "TEXT", nullable: false),
                    HandedBackAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_visits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "condemned",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Shown = table.Column<string>(type: "TEXT", nullable: false),
                    VisitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    EntryId = table.Column<Guid>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    WithdrawnAt = table.Column<long>(type: "INTEGER", nullable: true),
                    WithdrawnBy = table.Column<string>(type: "TEXT", nullable: true),
                    WithdrawnWhy = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_condemned", x => x.Id);
                    table.ForeignKey(
                        name: "FK_condemned_visits_VisitId",
                        column: x => x.VisitId,
                        principalTable: "visits",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    Sequence = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    VisitId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Field = table.Column<string>(type: "TEXT", nullable: false),
                    Typed = table.Column<string>(type: "TEXT", nullable: false),
                    SiValue = table.Column<double>(type: "REAL", nullable: true),
                    SiUnit = table.Column<string>(type: "TEXT", nullable: true),
                    Outcome = table.Column<string>(type: "TEXT", nullable: false),
                    Problem = table.Column<string>(type: "TEXT", nullable: true),
                    EngineVersion = table.Column<string>(type: "TEXT", nullable: false),
                    TableEdition = table.Column<string>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Role = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    ReceivedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Supersedes = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => x.Sequence);
                    table.ForeignKey(
                        name: "FK_entries_visits_VisitId",
                        column: x => x.VisitId,
                        principalTable: "visits",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_condemned_EntryId_Kind_Key",
                table: "condemned",
                columns: new[] { "EntryId", "Kind", "Key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_condemned_Kind_Key",
                table: "condemned",
                columns: new[] { "Kind", "Key" });

            migrationBuilder.CreateIndex(
                name: "IX_condemned_VisitId",
                table: "condemned",
                column: "VisitId");

            migrationBuilder.CreateIndex(
                name: "IX_entries_Id",
                table: "entries",
                column: "Id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_entries_VisitId_Sequence",
                table: "entries",
                columns: new[] { "VisitId", "Sequence" });

            migrationBuilder.CreateIndex(
                name: "IX_people_Name",
                table: "people",
                column: "Name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_visits_HandedBackAt",
                table: "visits",
                column: "HandedBackAt");

            migrationBuilder.CreateIndex(
                name: "IX_visits_Number",
                table: "visits",
                column: "Number",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "condemned");

            migrationBuilder.DropTable(
                name: "entries");

            migrationBuilder.DropTable(
                name: "host_keys");

            migrationBuilder.DropTable(
                name: "people");

            migrationBuilder.DropTable(
                name: "visits");
        }
    }
}
