package varanid.intake.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileKindTest {

    @Test
    void knowsWhatIsKeptByItsBytes() throws Exception {
        assertThat(FileKind.of(MadePictures.jpeg(4, 4))).isEqualTo(FileKind.JPEG);
        assertThat(FileKind.of(MadePictures.png(4, 4))).isEqualTo(FileKind.PNG);
        assertThat(FileKind.of(MadeReports.plain())).isEqualTo(FileKind.PDF);
    }

    /** The first bytes of files, as their formats define them; two are made up. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            RIFF....WEBPVP8 | is a WebP picture
            ....ftypheic... | is a HEIC or AVIF picture, as some telephones make them
            ....ftypmif1... | is a HEIC or AVIF picture, as some telephones make them
            ....ftypisom... | is a video
            GIF89a          | is a GIF
            BM......        | is a BMP
            <svg xmlns="http://www.w3.org/2000/svg"/> | is neither JPEG nor PNG nor PDF, whatever it is called
            <!DOCTYPE html> | is neither JPEG nor PNG nor PDF, whatever it is called
            PK..            | is neither JPEG nor PNG nor PDF, whatever it is called
            a%PDF-1.7       | is neither JPEG nor PNG nor PDF, whatever it is called
            """)
    void refusesOtherKindsAndSaysWhatToDo(String first, String wrong) {
        assertThatThrownBy(() -> FileKind.of(first.getBytes(StandardCharsets.US_ASCII)))
                .isInstanceOfSatisfying(Refused.class, refused -> {
                    assertThat(refused.wrong()).isEqualTo(wrong);
                    assertThat(refused.right()).isNotEmpty();
                });
        assertThatThrownBy(() -> FileKind.of(new byte[0])).hasMessage("is empty");
    }
}
