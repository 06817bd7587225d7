package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.geneticsrules.json.Documents;
import org.geneticsrules.table.PedigreeTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands about kits that a table counts, and about litters of which it says why they are recorded. */
class CountedKitsTest {

    /** The kennel of {@link RecordedCommandsTest} with three more clear kits: odds of 2/3 : 1/3 x (1/2)^4, which is 1/9 (calculated). */
    private static final String KENNEL = """
            id,count,sex,litter,dam,sire,kits scored,ascertainment,ascertainment sign,trait: eye colour
            Sorrel,,female,,,,,,,pink
            Wicket,,female,,,,,,,dark
            Tarn,,male,,,,,,,dark
            Fennick,,male,A,Wicket,Tarn,2,at least one,eye colour: pink,dark
            ,1,,A,,,,,,pink
            Bramble,,male,B,Sorrel,Fennick,4,complete,,dark
            ,3,,B,,,,,,dark
            """;

    @TempDir
    private Path folder = Path.of("");

    private Run trail(String name, String text) throws IOException {
        Path file = Files.writeString(folder.resolve(name), text);
        return Run.of(
                "carrier-trail",
                "--alone",
                "--pedigree",
                file.toString(),
                "--animal",
                "Fennick",
                "--carries",
                "albino",
                "--population",
                "few carriers");
    }

    @Test
    void counted_kits_are_as_good_as_named_ones() throws IOException {
        Run run = trail("kennel.csv", KENNEL);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        String said = run.out().replaceAll("\\s+", " ");
        assertTrue(said.startsWith("By all records \"Fennick\" carries albino with a chance of 1/9 (11.11 %);"), said);
        assertTrue(said.contains("the look of \"B/3\" (eye colour: dark) x 1/2 1/9 (11.11 %)"), said);
        String document = Documents.write(PedigreeTable.of("kennel.csv", "1").read(KENNEL));
        assertTrue(document.contains("atLeastOne"), document);
        assertEquals(run.out(), trail("kennel.json", document).out());
    }

    @Test
    void a_sign_that_is_no_trait_is_told_with_its_place() throws IOException {
        Run run = trail("kennel.csv", KENNEL.replace("eye colour: pink,dark", "eye color: pink,dark"));
        assertTrue(run.err().contains("5:"), run.err());
        assertTrue(run.err().contains("did you mean \"eye colour\"?"), run.err());
    }
}
