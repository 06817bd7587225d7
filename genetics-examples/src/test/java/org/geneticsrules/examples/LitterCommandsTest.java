package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Litters of ferrets held against models, from the command line. */
class LitterCommandsTest {

    private static final String HEAD =
            "id,sex,litter,dam,sire,count,trait: eye colour,trait: hue,moult,season,ascertainment\n";

    @TempDir
    private Path folder;

    private String table(String rows) throws IOException {
        return Files.writeString(folder.resolve("litters.csv"), HEAD + rows).toString();
    }

    /** Dark-eyed parents with pink-eyed kits in both of two litters: both carry albino, and one kit in four is as expected. */
    private String fitting() throws IOException {
        return table("""
                hob,male,,,,,dark,black,2,winter,
                jill,female,,,,,dark,black,2,winter,
                ,,first,jill,hob,5,dark,black,1,winter,complete
                ,,first,jill,hob,2,pink,none seen,1,winter,complete
                ,,second,jill,hob,6,dark,black,1,winter,complete
                ,,second,jill,hob,1,pink,none seen,1,winter,complete
                """);
    }

    @Test
    void litters_that_go_with_the_model() throws IOException {
        Run run = Run.of("litter-fit", "--pedigree", fitting(), "--traits", "eye colour");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(text.startsWith("These litters go with the model: "), text);
        // both parents carry albino, so 14 kits are a quarter pink-eyed: 3.5
        assertTrue(text.contains("eye colour: pink: 3, 3.50 expected"), text);
        assertTrue(text.contains("chi-squared 0.0952, 1 df"), text);
    }

    @Test
    void two_albinos_with_a_dark_eyed_kit_exclude_the_model() throws IOException {
        String file = table("""
                hob,male,,,,,pink,none seen,2,winter,
                jill,female,,,,,pink,none seen,2,winter,
                ,,first,jill,hob,3,pink,none seen,1,winter,complete
                ,,first,jill,hob,1,dark,black,1,winter,complete
                """);
        Run run = Run.of("litter-fit", "--pedigree", file, "--traits", "eye colour", "--format", "json");
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        JsonNode answer = JsonMapper.shared().readTree(run.out());
        assertEquals("litter-answer", answer.get("kind").asString());
        assertTrue(answer.get("verdict").asString().contains("first/4 of litter first cannot be"), run.out());
        assertEquals(
                "impossible",
                answer.get("fit").get("kits").get(3).get("standing").asString());
    }

    /** Silver by dose and silver as a recessive foretell the same of eyes, and the answer says so. */
    @Test
    void what_the_records_cannot_decide() throws IOException {
        Run run = Run.of(
                "which-model",
                "--pedigree",
                fitting(),
                "--traits",
                "eye colour",
                "--rival",
                "geneticsrules.ferret.silver-recessive");
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(text.startsWith("These records cannot tell the models apart"), text);
        assertTrue(text.contains("A likelihood ratio of 20 : 1 is evidence here"), text);
        assertFalse(run.out().contains("NaN"), run.out());
    }

    @Test
    void what_is_mistyped_is_named_and_nothing_is_printed() throws IOException {
        Run draws = Run.of("litter-fit", "--pedigree", fitting(), "--draws", "3", "--format", "xml");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, draws.code());
        assertEquals("", draws.out());
        assertTrue(draws.err().contains("--draws: 3"), draws.err());
        assertTrue(draws.err().contains("unknown word \"xml\""), draws.err());
        Run rival = Run.of("which-model", "--pedigree", fitting(), "--rival", "silver-recesive");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, rival.code());
        assertTrue(rival.err().contains("silver-recesive"), rival.err());
        Run trait = Run.of("litter-fit", "--pedigree", fitting(), "--traits", "eye color");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, trait.code(), trait.out());
        assertTrue(trait.err().contains("did you mean \"eye colour\"?"), trait.err());
    }

    /** Both parents carry albino by their kits, and so a test of the hob can only say so; a kit that nobody looked at is looked at first. */
    @Test
    void what_to_do_next_in_text_and_document() throws IOException {
        String file = fitting();
        String[] asked = {
            "tell-apart",
            "--pedigree",
            file,
            "--traits",
            "eye colour",
            "--rival",
            "geneticsrules.ferret.silver-recessive",
            "--planned",
            "hob, jill",
            "--population",
            "few carriers"
        };
        Run run = Run.of(asked);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(
                text.startsWith("No look at any animal, and no mating, tells \"Ferret coats by common practice\""),
                text);
        assertTrue(text.contains("which is proved"), text);
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        List<String> json = new ArrayList<>(List.of(asked));
        json.addAll(List.of("--format", "json"));
        JsonNode answer =
                JsonMapper.shared().readTree(Run.of(json.toArray(String[]::new)).out());
        assertEquals("tell-apart-answer", answer.get("kind").asString());
        assertEquals("never", answer.get("apart").get(0).get("byLooks").asString());
        assertTrue(answer.get("cautions").size() > 0);
    }

    /** Two models of dilution: the planned litter of two pale parents is weighed after the looks, by itself and with its bar. */
    @Test
    void a_planned_litter_is_weighed_and_progress_is_shown() throws IOException {
        String file = Files.writeString(folder.resolve("pale.csv"), """
                        id,count,sex,litter,dam,sire,weeks,moult,ascertainment,trait: dilution
                        Fern,,female,,,,60,2,,sandy
                        Rowan,,male,,,,60,2,,lightened
                        """).toString();
        Run run = Run.of(
                "tell-apart",
                "--pedigree",
                file,
                "--traits",
                "dilution",
                "--rival",
                "geneticsrules.ferret.pale-apart",
                "--planned",
                "Rowan, Fern",
                "--kits",
                "2",
                "--weeks",
                "60",
                "--moult",
                "2",
                "--population",
                "few carriers",
                "--progress",
                "always");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(text.contains("Kits of matings that are planned in any case"), text);
        assertTrue(text.contains("look at dilution in 2 kits of \"Rowan\" and \"Fern\", a planned mating"), text);
        assertTrue(text.contains("it excludes model 1"), text);
        assertTrue(run.err().contains("100 %"), run.err());
        assertFalse(run.out().contains("NaN"), run.out());
    }

    @Test
    void what_is_mistyped_about_next_steps_is_told_all_at_once() throws IOException {
        Run run = Run.of(
                "tell-apart",
                "--pedigree",
                fitting(),
                "--rival",
                "geneticsrules.ferret.silver-recesive",
                "--planned",
                "hob",
                "--planned",
                "hob, jil",
                "--kits",
                "99",
                "--sure",
                "100 %");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
        assertEquals("", run.out());
        for (String problem : List.of(
                "silver-recesive",
                "--planned \"hob\": expected a sire and a dam",
                "did you mean \"jill\"?",
                "--kits: 99",
                "--sure 100 %")) {
            assertTrue(run.err().contains(problem), problem + " in " + run.err());
        }
        Run none = Run.of("tell-apart", "--pedigree", fitting());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, none.code(), none.out());
        assertTrue(none.err().contains("--rival"), none.err());
    }
}
