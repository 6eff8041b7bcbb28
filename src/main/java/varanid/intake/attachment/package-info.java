/**
 * Attachments: photographs and laboratory reports of an animal, of a look at it, or of a sample.
 *
 * <p><b>Words.</b> An <em>attachment</em> is a picture or a report (a PDF) that somebody added. A <em>thumbnail</em> is
 * the same picture, small. <em>Withdrawn</em> is one that is shown no more.
 *
 * <p><b>Always.</b> What something is, is read from its bytes, never from its name or from what the sender calls it. Of a
 * picture only the pixels are kept: it is written anew, upright, so that where it was taken, by what, and whatever was
 * hidden in or behind it are gone. Its size is read before anything is unpacked. A report is kept as it was sent, and
 * refused where it is encrypted, or anything in it acts by itself: scripts, files within it, programs it starts. Nothing is
 * ever served as something that acts: a report is only to be saved. An attachment is never changed; its bytes are those of
 * its SHA-256.
 *
 * <p>May use: {@code animal}, {@code assessment}, {@code sample}, {@code platform}. Pure within it: {@code FileKind},
 * {@code Orientation}, {@code PackedStreams}, {@code PictureParts}.
 */
@NullMarked
package varanid.intake.attachment;

import org.jspecify.annotations.NullMarked;
