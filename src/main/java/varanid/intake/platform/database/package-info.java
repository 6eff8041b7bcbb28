/**
 * The PostgreSQL database: our own on this machine, or the one that somebody names with
 * {@code SPRING_DATASOURCE_URL}.
 *
 * <p>Words: the <em>embedded</em> server is a PostgreSQL of this installation, in the home folder, run by and for this
 * process alone; an <em>external</em> one is run by somebody else. The <em>owner</em> role owns the tables and migrates
 * them; the <em>service</em> role is what the application works with. An <em>orphan</em> is an embedded server whose
 * application was killed.
 *
 * <p>Always true: what was committed survives the death of this process and of the machine; one process at a time uses
 * a home folder; a folder that holds a finished database is never deleted; no process is stopped that was not proven to
 * be this folder's server; the server does not outlive an orderly end or a failed start. Append-only tables refuse
 * UPDATE, DELETE and TRUNCATE, by the rights of the service role and by triggers (see {@code migrations}).
 *
 * <p>May use: {@code platform.start}, Spring Boot, Flyway, the PostgreSQL driver. Knows no feature.
 */
@NullMarked
package varanid.intake.platform.database;

import org.jspecify.annotations.NullMarked;
