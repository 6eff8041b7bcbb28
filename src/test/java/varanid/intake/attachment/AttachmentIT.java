package varanid.intake.attachment;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.GpsDirectory;
import jakarta.servlet.ServletContext;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import varanid.intake.platform.web.FileUpload;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Multipart;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

@ServiceTest
class AttachmentIT {

    @Autowired
    Organisations organisations;

    @Autowired
    Attachments publicAttachments;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ServletContext servlet;

    private Organisations.Organisation organisation;
    private Client keeper;
    private String animalId;
    private String animal;
    private String attachments;

    @BeforeEach
    void someAnimal() {
        organisation = organisations.create();
        keeper = organisation.keeper();
        animalId = keeper.post("/api/v1/animals", "{}").id();
        animal = "/api/v1/animals/" + animalId;
        attachments = animal + "/attachments";
    }

    /** Whatever was sent, and however it ended. */
    @AfterEach
    void leavesNoTemporaryFile() throws IOException {
        Path folder = ((File) servlet.getAttribute(ServletContext.TEMPDIR)).toPath();
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.filter(each -> each.toString().endsWith(".tmp"))).isEmpty();
        }
    }

    // ---- keeping and serving

    @Test
    void keepsAPictureOfAFindingWithoutThePlaceItWasTakenAt() throws Exception {
        Answer look = keeper.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\"}");
        Answer kept = photo(MadePictures.withExif(MadePictures.jpeg(800, 600), 6))
                .field("assessment", look.id())
                .field("finding", "mites")
                .field("caption", "behind the left <b>arm</b>")
                .field("takenAt", "2026-03-09T12:00:00Z")
                .post(keeper, attachments);
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.header("Location")).contains(attachments + "/" + kept.id());
        assertThat(kept.text("/assessment")).isEqualTo(look.id());
        assertThat(kept.text("/finding")).isEqualTo("mites");
        assertThat(kept.text("/caption")).isEqualTo("behind the left <b>arm</b>");
        assertThat(kept.text("/takenAt")).isEqualTo("2026-03-09T12:00:00Z");
        assertThat(kept.text("/recordedBy")).isEqualTo(keeper.personId().toString());
        assertThat(kept.text("/mediaType")).isEqualTo("image/jpeg");
        // It was held upright: 800 by 600 as stored is 600 by 800 as seen.
        assertThat(kept.json().get("width").intValue()).isEqualTo(600);
        assertThat(kept.json().get("height").intValue()).isEqualTo(800);
        assertThat(keeper.get(attachments + "/" + kept.id()).json()).isEqualTo(kept.json());

        HttpResponse<byte[]> content = bytes(kept.text("/content"));
        assertThat(content.statusCode()).isEqualTo(200);
        assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(content.body()))
                        .getDirectoriesOfType(GpsDirectory.class))
                .isEmpty();
        assertThat(sha256(content.body())).isEqualTo(kept.text("/sha256"));
        assertThat(content.body()).hasSize(kept.json().get("bytes").intValue());
        assertServedWithCare(content, "image/jpeg", "inline; filename=\"" + kept.id() + ".jpg\"");

        HttpResponse<byte[]> small = bytes(kept.text("/thumbnail"));
        assertServedWithCare(small, "image/jpeg", "inline; filename=\"" + kept.id() + "-small.jpg\"");
        assertThat(ImageIO.read(new ByteArrayInputStream(small.body())).getHeight())
                .isEqualTo(320);
        assertThat(stored())
                .allSatisfy(bytes -> assertThat(new String(bytes, StandardCharsets.ISO_8859_1))
                        .doesNotContain("Exif", MadePictures.SECRET));
    }

    @Test
    void keepsAReportOfASampleAsItWasSentAndOnlyToBeSaved() throws Exception {
        Answer sample = keeper.post(animal + "/samples", "{\"kind\":\"stool\"}");
        byte[] sent = MadeReports.plain();
        Answer kept = Multipart.of(sent, "results.pdf", "application/pdf")
                .field("sample", sample.id())
                .post(keeper, attachments);
        assertThat(kept.status()).as(kept.body()).isEqualTo(201);
        assertThat(kept.text("/sample")).isEqualTo(sample.id());
        assertThat(kept.json().get("pages").intValue()).isEqualTo(1);
        assertThat(kept.json().has("thumbnail")).isFalse();
        HttpResponse<byte[]> content = bytes(kept.text("/content"));
        assertThat(content.body()).isEqualTo(sent);
        assertServedWithCare(content, "application/pdf", "attachment; filename=\"" + kept.id() + ".pdf\"");
        assertThat(bytes(attachments + "/" + kept.id() + "/thumbnail").statusCode())
                .isEqualTo(404);
    }

    @Test
    void looksAtTheBytesAndNotAtTheNameOrType() {
        Answer kept = Multipart.of(MadePictures.png(20, 10), "results.pdf", "application/pdf")
                .post(keeper, attachments);
        assertThat(kept.text("/mediaType")).isEqualTo("image/jpeg");
        assertThat(kept.json().has("takenAt")).isFalse();
    }

    @Test
    void servesTheSameBytesOnlyOnce() throws Exception {
        Answer kept = photo(MadePictures.jpeg(40, 30)).post(keeper, attachments);
        HttpResponse<byte[]> first = bytes(kept.text("/content"));
        String eTag = first.headers().firstValue("ETag").orElseThrow();
        HttpResponse<byte[]> again = bytes(kept.text("/content"), "If-None-Match", eTag);
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.body()).isEmpty();
        assertThat(again.headers().firstValue("ETag")).contains(eTag);
        assertThat(bytes(kept.text("/content"), "If-None-Match", "\"other\"").statusCode())
                .isEqualTo(200);
    }

    // ---- refusing

    static Stream<Arguments> filesThatAreRefused() {
        byte[] jpeg = MadePictures.jpeg(300, 200);
        return Stream.of(
                named("<html><script>alert(1)</script></html>", "is neither JPEG nor PNG nor PDF"),
                named("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>", "is neither JPEG nor PNG nor PDF"),
                named("RIFF\0\0\0\0WEBPVP8 ", "is a WebP picture"),
                named("\0\0\0\u0018ftypheic\0\0\0\0", "is a HEIC or AVIF picture"),
                named(new byte[0], "is empty"),
                named(Arrays.copyOf(jpeg, jpeg.length / 2), "ends before the picture does"),
                named(MadePictures.claiming(60_000, 60_000), "is 60000 by 60000 pixels"),
                named(MadeReports.withAction("JavaScript"), "has a script in it"),
                named(MadeReports.withAction("Launch"), "has an action that starts a program in it"));
    }

    @ParameterizedTest
    @MethodSource("filesThatAreRefused")
    void refusesAFileAndSaysWhy(byte[] file, String wrong) {
        Answer answer = photo(file).field("caption", "x").post(keeper, attachments);
        assertThat(answer.status()).as(answer.body()).isEqualTo(422);
        assertThat(answer.faults()).containsExactly("#/file");
        assertThat(answer.text("/faults/0/wrong")).startsWith(wrong);
        assertThat(answer.text("/faults/0/right")).isNotEmpty();
        assertThat(stored()).isEmpty();
    }

    @Test
    void namesEveryFaultAtOnce() {
        Answer answer = photo("no picture".getBytes(StandardCharsets.US_ASCII))
                .field("assessment", UUID.randomUUID().toString())
                .field("sample", "first")
                .field("caption", "")
                .field("takenAt", "2999-01-01T00:00:00Z")
                .field("colour", "red")
                .post(keeper, attachments);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.faults())
                .containsExactlyInAnyOrder("#/assessment", "#/sample", "#/caption", "#/takenAt", "#/file", "#/colour");
        assertThat(new Multipart()
                        .field("caption", "x")
                        .post(keeper, attachments)
                        .faults())
                .containsExactly("#/file");
    }

    @ParameterizedTest
    @CsvSource({"finding only, #/finding", "unknown finding, #/finding", "both, #", "foreign, #/assessment"})
    void isOfOneThingThatTheAnimalHas(String which, String pointer) {
        String look = keeper.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\"}")
                .id();
        String sample = keeper.post(animal + "/samples", "{\"kind\":\"stool\"}").id();
        String other = keeper.post("/api/v1/animals", "{}").id();
        Multipart sent = photo(MadePictures.jpeg(8, 8));
        Answer answer = switch (which) {
            case "finding only" -> sent.field("finding", "mites").post(keeper, attachments);
            case "unknown finding" ->
                sent.field("finding", "dragon").field("assessment", look).post(keeper, attachments);
            case "both" ->
                sent.field("sample", sample).field("assessment", look).post(keeper, attachments);
            default -> sent.field("assessment", look).post(keeper, "/api/v1/animals/" + other + "/attachments");
        };
        assertThat(answer.faults()).as(answer.body()).containsExactly(pointer);
        assertThat(stored()).isEmpty();
    }

    @Test
    void refusesWhatIsTooLargeWhetherItSaysItsLengthOrNot() {
        Multipart sent = Multipart.of(new byte[FileUpload.LARGEST_FILE + 1], "a.pdf", "application/pdf");
        byte[] body = sent.bytes();
        for (var publisher : List.of(
                BodyPublishers.ofByteArray(body), BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body)))) {
            Answer answer = keeper.send("POST", attachments, publisher, "Content-Type", sent.contentType());
            assertThat(answer.status()).as(answer.body()).isEqualTo(413);
            assertThat(answer.isProblem("too-large")).isTrue();
        }
        byte[] large = MadePictures.concat(MadePictures.jpeg(8, 8), new byte[Picture.LARGEST_FILE]);
        assertThat(photo(large).post(keeper, attachments).isProblem("too-large"))
                .isTrue();
        assertThat(photo(MadePictures.jpeg(8, 8))
                        .field("caption", "x".repeat(70_000))
                        .post(keeper, attachments)
                        .isProblem("too-large"))
                .isTrue();
        assertThat(stored()).isEmpty();
    }

    @Test
    void refusesABodyThatIsNoFormAndAFormWhereJsonIsDue() {
        assertThat(keeper.post(attachments, "{}").isProblem("unsupported-media-type"))
                .isTrue();
        Multipart form = photo(MadePictures.jpeg(8, 8));
        for (String other : List.of("/api/v1/animals", animal + "/diary", animal + "/samples")) {
            assertThat(form.post(keeper, other).isProblem("unsupported-media-type"))
                    .as(other)
                    .isTrue();
        }
        assertThat(form.post(organisations.nobody(), attachments).status()).isEqualTo(401);
        assertThat(keeper.send("POST", attachments, BodyPublishers.ofString("x"), "Content-Type", "multipart/form-data")
                        .isProblem("malformed-request"))
                .isTrue();
        byte[] cut = Arrays.copyOf(form.bytes(), form.bytes().length - 20);
        assertThat(keeper.send("POST", attachments, BodyPublishers.ofByteArray(cut), "Content-Type", form.contentType())
                        .isProblem("malformed-request"))
                .isTrue();
        assertThat(photo(MadePictures.jpeg(8, 8))
                        .field("caption", "a")
                        .field("caption", "b")
                        .post(keeper, attachments)
                        .isProblem("malformed-request"))
                .isTrue();
        assertThat(photo(MadePictures.jpeg(8, 8))
                        .part("name=\"caption\"", new byte[] {(byte) 0xFF})
                        .post(keeper, attachments)
                        .isProblem("malformed-request"))
                .isTrue();
        assertThat(stored()).isEmpty();
    }

    @Test
    void isForKeepersAndCliniciansOfTheOrganisation() throws Exception {
        Answer kept = photo(MadePictures.jpeg(8, 8)).post(organisation.clinician(), attachments);
        assertThat(kept.status()).isEqualTo(201);
        Client stranger = organisations.create().person(Role.values());
        assertThat(photo(MadePictures.jpeg(8, 8)).post(stranger, attachments).isProblem("not-found"))
                .isTrue();
        for (String path : List.of("", "/content", "/thumbnail")) {
            assertThat(stranger.get(attachments + "/" + kept.id() + path).isProblem("not-found"))
                    .as(path)
                    .isTrue();
        }
        String other = keeper.post("/api/v1/animals", "{}").id();
        assertThat(keeper.get("/api/v1/animals/" + other + "/attachments/" + kept.id() + "/content")
                        .isProblem("not-found"))
                .isTrue();
    }

    // ---- once, many, withdrawn

    @Test
    void keepsOncePerKeyWhateverTheBoundaryAndName() {
        byte[] file = MadePictures.jpeg(80, 60);
        Answer first = photo(file).field("caption", "x").post(keeper, attachments, "Idempotency-Key", "k");
        Answer second = new Multipart()
                .field("caption", "x")
                .file(file, "another-name.jpg", "image/jpeg")
                .post(keeper, attachments, "Idempotency-Key", "k");
        assertThat(second.status()).isEqualTo(201);
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(second.header("Idempotency-Replayed")).contains("true");
        Answer otherCaption = photo(file).field("caption", "y").post(keeper, attachments, "Idempotency-Key", "k");
        assertThat(otherCaption.isProblem("idempotency-key-reused")).isTrue();
        Answer otherFile = photo(MadePictures.jpeg(81, 60))
                .field("caption", "x")
                .post(keeper, attachments, "Idempotency-Key", "k");
        assertThat(otherFile.isProblem("idempotency-key-reused")).isTrue();
        assertThat(stored()).hasSize(1);
    }

    @Test
    void keepsOnceWhenTheSameIsSentAtOnce() throws Exception {
        Multipart sent = photo(MadePictures.jpeg(400, 300));
        List<Answer> answers = atOnce(6, () -> sent.post(keeper, attachments, "Idempotency-Key", "k"));
        assertThat(answers).allSatisfy(each -> assertThat(each.status()).isIn(201, 409));
        assertThat(answers.stream()
                        .filter(each -> each.status() == 201)
                        .map(Answer::id)
                        .distinct())
                .hasSize(1);
        assertThat(stored()).hasSize(1);
    }

    @Test
    void anAnimalHasAtMostTwoHundredAlsoWhenManyAreSentAtOnce() throws Exception {
        UUID one = UUID.fromString(
                photo(MadePictures.jpeg(8, 8)).post(keeper, attachments).id());
        for (int i = 0; i < Attachments.MOST_OF_AN_ANIMAL - 3; i++) {
            jdbc.sql("""
                            INSERT INTO attachment (organisation_id, id, animal_id, recorded_by, recorded_at, media_type,
                                width, height, content, byte_count, sha256, thumbnail)
                            SELECT organisation_id, ?, animal_id, recorded_by, recorded_at, media_type,
                                width, height, content, byte_count, sha256, thumbnail
                            FROM attachment WHERE organisation_id = ? AND id = ?""").params(UUID.randomUUID(), organisation.id(), one).update();
        }
        List<Answer> answers = atOnce(5, () -> photo(MadePictures.jpeg(8, 8)).post(keeper, attachments));
        assertThat(answers.stream().map(Answer::status)).containsExactlyInAnyOrder(201, 201, 409, 409, 409);
        assertThat(stored()).hasSize(Attachments.MOST_OF_AN_ANIMAL);
    }

    @Test
    void whatIsWithdrawnIsNotServedAndStaysOnRecord() throws Exception {
        Answer kept = photo(MadePictures.jpeg(40, 30)).post(keeper, attachments);
        String one = attachments + "/" + kept.id();
        assertThat(publicAttachments.list(organisation.id(), UUID.fromString(animalId)))
                .hasSize(1);
        assertThat(keeper.post(one + "/withdrawal", "{}").faults()).containsExactly("#/reason");

        Answer withdrawn = keeper.post(one + "/withdrawal", "{\"reason\":\"another animal\"}");

        assertThat(withdrawn.status()).as(withdrawn.body()).isEqualTo(200);
        assertThat(withdrawn.text("/withdrawn/reason")).isEqualTo("another animal");
        assertThat(withdrawn.json().has("content")).isFalse();
        assertThat(keeper.get(one).json()).isEqualTo(withdrawn.json());
        assertThat(keeper.get(attachments).json().at("/items/0")).isEqualTo(withdrawn.json());
        for (String path : List.of("/content", "/thumbnail")) {
            Answer gone = keeper.get(one + path, "If-None-Match", "\"" + kept.text("/sha256") + "\"");
            assertThat(gone.isProblem("attachment-withdrawn")).as(gone.body()).isTrue();
            assertThat(gone.status()).isEqualTo(410);
        }
        assertThat(publicAttachments.list(organisation.id(), UUID.fromString(animalId)))
                .isEmpty();
        assertThat(publicAttachments.findThumbnail(
                        organisation.id(), UUID.fromString(animalId), UUID.fromString(kept.id())))
                .isEmpty();
        assertThat(keeper.post(one + "/withdrawal", "{\"reason\":\"again\"}").isProblem("conflict"))
                .isTrue();
    }

    @Test
    void listsByPagesWithoutTheirBytes() {
        Answer one = photo(MadePictures.jpeg(8, 8)).post(keeper, attachments);
        Answer two = photo(MadePictures.jpeg(8, 8)).post(keeper, attachments);
        Answer page = keeper.get(attachments + "?limit=1");
        assertThat(page.text("/items/0/id")).isEqualTo(one.id());
        assertThat(keeper.get(page.link("next").orElseThrow()).text("/items/0/id"))
                .isEqualTo(two.id());
    }

    private static Multipart photo(byte[] file) {
        return Multipart.of(file, "photo.jpg", "image/jpeg");
    }

    private static Arguments named(String file, String wrong) {
        return named(file.getBytes(StandardCharsets.ISO_8859_1), wrong);
    }

    private static Arguments named(byte[] file, String wrong) {
        return Arguments.of(file, wrong);
    }

    private static List<Answer> atOnce(int times, Callable<Answer> request) throws Exception {
        ExecutorService many = Executors.newFixedThreadPool(times);
        try {
            List<Future<Answer>> futures = many.invokeAll(
                    IntStream.range(0, times).mapToObj(each -> request).toList());
            return futures.stream().map(AttachmentIT::result).toList();
        } finally {
            many.shutdown();
        }
    }

    private static Answer result(Future<Answer> future) {
        try {
            return future.get();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private HttpResponse<byte[]> bytes(String path, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + keeper.port() + path))
                .header("Authorization", "Bearer " + keeper.token());
        if (headers.length > 0) {
            request.headers(headers);
        }
        return HttpClient.newHttpClient().send(request.build(), BodyHandlers.ofByteArray());
    }

    private static void assertServedWithCare(HttpResponse<byte[]> reply, String type, String disposition) {
        assertThat(reply.headers().allValues("Content-Type")).containsExactly(type);
        assertThat(reply.headers().allValues("Content-Disposition")).containsExactly(disposition);
        assertThat(reply.headers().allValues("Content-Security-Policy")).containsExactly("default-src 'none'; sandbox");
        assertThat(reply.headers().allValues("X-Content-Type-Options")).containsExactly("nosniff");
        assertThat(reply.headers().allValues("Cache-Control")).containsExactly("private, no-cache");
    }

    private List<byte[]> stored() {
        return jdbc.sql("SELECT content FROM attachment WHERE organisation_id = ?")
                .param(organisation.id())
                .query((row, number) -> row.getBytes(1))
                .list();
    }

    private static String sha256(byte[] bytes) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }
}
