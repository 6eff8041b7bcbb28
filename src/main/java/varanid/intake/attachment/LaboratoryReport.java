package varanid.intake.attachment;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.jspecify.annotations.Nullable;

/**
 * A PDF that can be opened, and in which nothing acts by itself. It is kept as it was sent: written anew it would be
 * another document than the laboratory signed.
 *
 * @param pages how many it has
 */
record LaboratoryReport(byte[] pdf, int pages) {

    private static final String PLAIN = "the same report printed or exported anew as PDF, without such things";
    private static final int MOST_OBJECTS = 300_000;

    /** What an action is, or where one hides (ISO 32000-1, 12.6.4, 7.11.4, 12.7.8 and 13), and what it comes to. */
    private static final Map<String, String> ACTS = Map.ofEntries(
            Map.entry("JavaScript", "a script"),
            Map.entry("JS", "a script"),
            Map.entry("Launch", "an action that starts a program"),
            Map.entry("EmbeddedFile", "a file within it"),
            Map.entry("EmbeddedFiles", "a file within it"),
            Map.entry("EF", "a file within it"),
            Map.entry("FileAttachment", "a file within it"),
            Map.entry("GoToE", "a file within it"),
            Map.entry("GoToR", "an action that opens another file"),
            Map.entry("SubmitForm", "an action that sends something"),
            Map.entry("ImportData", "an action that fetches something"),
            Map.entry("RichMedia", "media that play"),
            Map.entry("Rendition", "media that play"),
            Map.entry("Movie", "media that play"),
            Map.entry("Sound", "media that play"),
            Map.entry("XFA", "a form that runs"));

    /** Long enough not to come about by chance in packed bytes. */
    private static final Set<String> UNMISTAKABLE = Set.of(
            "JavaScript",
            "Launch",
            "EmbeddedFile",
            "EmbeddedFiles",
            "FileAttachment",
            "SubmitForm",
            "ImportData",
            "RichMedia");

    /** Where a name is what something is, and not what it is called: a font called Sound does nothing. */
    private static final List<COSName> KINDS = List.of(COSName.S, COSName.SUBTYPE, COSName.TYPE);

    /** @throws Refused where it cannot be opened, is encrypted, or something in it acts */
    static LaboratoryReport read(byte[] pdf) throws Refused {
        Set<String> seen = new TreeSet<>(PackedStreams.look(pdf, UNMISTAKABLE));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            if (document.isEncrypted()) {
                throw encrypted();
            }
            seen.addAll(acts(document.getDocument()));
            requireNone(seen);
            int pages = document.getNumberOfPages();
            if (pages < 1) {
                throw unreadable();
            }
            return new LaboratoryReport(pdf, pages);
        } catch (InvalidPasswordException e) {
            throw encrypted();
        } catch (IOException | RuntimeException | StackOverflowError e) {
            // What cannot be opened may still have been seen to act, and that is the more useful thing to say.
            requireNone(seen);
            throw unreadable();
        }
    }

    private static void requireNone(Set<String> seen) throws Refused {
        if (!seen.isEmpty()) {
            Set<String> what = new TreeSet<>();
            seen.forEach(each -> what.add(ACTS.get(each)));
            throw new Refused("has " + String.join(" and ", what) + " in it", PLAIN);
        }
    }

    private static Refused encrypted() {
        return new Refused("is encrypted", "the same report without a password or restrictions");
    }

    private static Refused unreadable() {
        return new Refused(
                "cannot be opened as a PDF",
                "the whole file: where a viewer opens it, print it anew as PDF from there");
    }

    /** Every object of the document, whether any page leads to it or not. */
    private static Set<String> acts(COSDocument document) throws IOException, Refused {
        Set<String> found = new HashSet<>();
        Set<COSObjectKey> keys = document.getXrefTable().keySet();
        if (keys.size() > MOST_OBJECTS) {
            throw unreadable();
        }
        look(document.getTrailer(), found);
        for (COSObjectKey key : List.copyOf(keys)) {
            look(document.getObjectFromPool(key).getObject(), found);
        }
        return found;
    }

    private static void look(@Nullable COSBase object, Set<String> found) {
        Deque<COSBase> open = new ArrayDeque<>();
        add(open, object);
        while (!open.isEmpty()) {
            COSBase each = open.pop();
            if (each instanceof COSArray array) {
                array.forEach(item -> add(open, item));
            } else if (each instanceof COSDictionary dictionary) {
                for (COSName kind : KINDS) {
                    if (dictionary.getItem(kind) instanceof COSName name && ACTS.containsKey(name.getName())) {
                        found.add(name.getName());
                    }
                }
                dictionary.entrySet().forEach(entry -> {
                    if (ACTS.containsKey(entry.getKey().getName())
                            && isActing(entry.getKey().getName())) {
                        found.add(entry.getKey().getName());
                    }
                    add(open, entry.getValue());
                });
            }
        }
    }

    /** As a key: names of media are those of resources too. */
    private static boolean isActing(String key) {
        return !ACTS.getOrDefault(key, "").equals("media that play");
    }

    /** Whatever stands in a place of its own is looked at by its own number. */
    private static void add(Deque<COSBase> open, @Nullable COSBase object) {
        if (object instanceof COSArray || object instanceof COSDictionary) {
            open.push(object);
        }
    }
}
