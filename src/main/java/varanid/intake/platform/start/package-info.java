/**
 * What has to be right before anything else can run: the data folder, and how a start that cannot succeed is told.
 *
 * <p>Words: the <em>home folder</em> is the one folder of this installation; it keeps the database (unless the database
 * is elsewhere) and the first token. A start that <em>cannot</em> succeed is one whose cause a person has to remove.
 *
 * <p>Always true: every file written here is readable by its owner only, and is either the old text or the whole new
 * text, also after a power cut; a foreseen failure is told in one message, without a stack trace.
 *
 * <p>May use: the JDK and Spring Boot. Knows no feature.
 */
@NullMarked
package varanid.intake.platform.start;

import org.jspecify.annotations.NullMarked;
