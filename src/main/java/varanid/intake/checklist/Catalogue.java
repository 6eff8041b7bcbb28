package varanid.intake.checklist;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.dataformat.yaml.YAMLMapper;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.scoring.ChecklistRefused;
import varanid.intake.scoring.Fault;

/**
 * Every checklist version that this build of the service has.
 *
 * <p>A published version is frozen: its digest stands in {@code shared/checklists/published.yaml}, and a file that was
 * edited afterwards, or is missing, is refused.
 */
@Component
public class Catalogue {

    private static final String FILES = "classpath:shared/checklists/*.v*.yaml";
    private static final String PUBLISHED = "classpath:shared/checklists/published.yaml";

    private final List<Edition> editions;

    /** @throws CannotStart where a file has a fault, or is not what was published */
    @Autowired
    Catalogue() {
        this(shipped());
    }

    private Catalogue(List<Edition> editions) {
        this.editions = editions;
    }

    private static List<Edition> shipped() {
        try {
            return new Catalogue(readFiles(), readPublished()).editions;
        } catch (ChecklistRefused e) {
            throw new CannotStart(
                    String.valueOf(e.getMessage()),
                    "Put the file back as it was published, and make changes as a new version.",
                    e);
        }
    }

    /**
     * @param files file name to bytes
     * @param published file name to SHA-256 of the bytes it was published with
     * @throws ChecklistRefused where a file has a fault, or is not what was published
     */
    Catalogue(Map<String, byte[]> files, Map<String, String> published) {
        ChecklistReader reader = new ChecklistReader();
        List<Edition> read = new ArrayList<>();
        files.forEach((name, bytes) -> read.add(edition(reader, name, bytes, published)));
        published.keySet().stream().filter(name -> !files.containsKey(name)).forEach(name -> {
            throw refused(name, "was published and is missing", "the file as it was published");
        });
        read.sort(Edition.IN_ORDER);
        editions = List.copyOf(read);
    }

    private static Edition edition(ChecklistReader reader, String name, byte[] bytes, Map<String, String> published) {
        Edition edition = reader.readEdition(name, bytes);
        String expectedName = edition.id() + ".v" + edition.version() + ".yaml";
        if (!expectedName.equals(name)) {
            throw refused(name, "holds " + edition.id() + " version " + edition.version(), expectedName);
        }
        String digest = published.get(name);
        if (edition.published() && !edition.sha256().equals(digest)) {
            throw refused(
                    name,
                    digest == null
                            ? "says it is published, and published.yaml does not know it"
                            : "was edited after it was published: its SHA-256 is " + edition.sha256() + ", not "
                                    + digest,
                    "the file as it was published, and changes as a new version");
        }
        if (!edition.published() && digest != null) {
            throw refused(name, "was published and now says it is a draft", "status: published");
        }
        return edition;
    }

    private static ChecklistRefused refused(String name, String wrong, String right) {
        return new ChecklistRefused(name, List.of(new Fault("", wrong, right)));
    }

    /** Every edition, by id and version. */
    public List<Edition> list() {
        return editions;
    }

    public Optional<Edition> find(String id, int version) {
        return editions.stream()
                .filter(edition -> edition.id().equals(id) && edition.version() == version)
                .findFirst();
    }

    /** The newest published version, or the newest draft where none is published. */
    public Optional<Edition> findNewest(String id) {
        List<Edition> ofId =
                editions.stream().filter(edition -> edition.id().equals(id)).toList();
        return ofId.stream()
                .filter(Edition::published)
                .reduce((older, newer) -> newer)
                .or(() -> ofId.stream().reduce((older, newer) -> newer));
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static Map<String, byte[]> readFiles() {
        Map<String, byte[]> files = new TreeMap<>();
        try {
            for (Resource file : new PathMatchingResourcePatternResolver().getResources(FILES)) {
                files.put(String.valueOf(file.getFilename()), file.getContentAsByteArray());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return files;
    }

    private static Map<String, String> readPublished() {
        try {
            byte[] bytes = new PathMatchingResourcePatternResolver()
                    .getResource(PUBLISHED)
                    .getContentAsByteArray();
            Map<String, String> published = new YAMLMapper().readValue(bytes, new TypeReference<>() {});
            return published == null ? Map.of() : published;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
