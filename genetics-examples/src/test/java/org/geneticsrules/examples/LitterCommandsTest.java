package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Litters of ferrets held against models, from the command line. */
@Tag("default-jdk")
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
        // by the first population of the model, and then by the other one, which makes no difference to known carriers
        assertTrue(text.contains("are as in population \"few carriers\""), text);
        assertTrue(text.contains("How well it fits otherwise"), text);
        assertTrue(text.contains("founders as in \"many carriers\": p 1.0000"), text);
        Run named = Run.of(
                "litter-fit", "--pedigree", fitting(), "--traits", "eye colour", "--population", "many carriers");
        assertTrue(named.out().contains("founders as in \"few carriers\": p 1.0000"), named.out());
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
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        JsonNode answer = JsonMapper.shared().readTree(run.out());
        assertEquals("litter-answer", answer.get("kind").asString());
        assertTrue(answer.get("decided").asBoolean());
        assertTrue(answer.get("fit").get("rejected").asBoolean());
        assertTrue(answer.get("verdict").asString().contains("first/4 of litter first cannot be"), run.out());
        assertEquals(
                "impossible",
                answer.get("fit").get("kits").get(3).get("standing").asString());
    }

    @Test
    void litters_that_cannot_be_tested_decide_nothing() throws IOException {
        String file = table("""
                hob,male,,,,,dark,black,2,winter,
                jill,female,,,,,dark,black,2,winter,
                ,,first,jill,,5,dark,black,1,winter,complete
                """);
        Run run = Run.of("litter-fit", "--pedigree", file, "--traits", "eye colour", "--format", "json");
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        JsonNode answer = JsonMapper.shared().readTree(run.out());
        assertFalse(answer.get("decided").asBoolean());
        assertFalse(answer.get("fit").get("rejected").asBoolean());
        assertEquals(1, answer.get("fit").get("untested").asInt());
        assertTrue(answer.get("verdict").asString().contains("was not found out"), run.out());
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
        assertTrue(text.contains("Ratios are averages over many litters"), text);
    }

    /** By names alone: both parents dark, two kits called albino; and by tests of kits alone, whose genotypes are as 1 : 2 : 1. */
    @Test
    void kits_that_were_called_by_names_or_tested() throws IOException {
        String called = Files.writeString(folder.resolve("called.csv"), """
                id,sex,litter,dam,sire,called,called in,facet,moult,season,light,ascertainment
                hob,male,,,,sable,British Isles,colour,2,winter,daylight,
                jill,female,,,,sable,British Isles,colour,2,winter,daylight,
                Pip,,A,jill,hob,albino,British Isles,colour,1,winter,daylight,complete
                Bo,,A,,,albino,British Isles,colour,1,winter,daylight,
                Wisp,,A,,,sable,British Isles,colour,1,winter,daylight,
                """).toString();
        Run fit = Run.of("litter-fit", "--pedigree", called, "--traits", "eye colour", "--format", "json");
        assertEquals(ExitCodes.ANSWERED, fit.code(), fit.err());
        JsonNode kits = JsonMapper.shared().readTree(fit.out()).get("fit").get("kits");
        assertEquals(3, kits.size());
        // both parents had an albino before: the second is one with 1/4
        assertEquals(0.25, Double.parseDouble(kits.get(0).get("chance").asString()), 1e-9);
        assertTrue(fit.out().contains("Names that animals were called by mean what the vocabularies say"), fit.out());
        Run which = Run.of(
                "which-model",
                "--pedigree",
                called,
                "--traits",
                "eye colour",
                "--rival",
                "geneticsrules.ferret.silver-recessive");
        assertTrue(which.out().startsWith("These records cannot tell the models apart"), which.out() + which.err());
        String tested = Files.writeString(folder.resolve("tested.csv"), """
                id,sex,litter,dam,sire,locus: C,ascertainment
                hob,male,,,,C/c,
                jill,female,,,,C/c,
                Pip,,A,jill,hob,c/c,complete
                Bo,,A,,,C/c,
                Wisp,,A,,,C/C,
                """).toString();
        Run of = Run.of("litter-fit", "--pedigree", tested, "--format", "json");
        // kits that were tested are judged one by one, and no litter of them by counts
        assertEquals(ExitCodes.UNDECIDED, of.code(), of.err());
        JsonNode chances = JsonMapper.shared().readTree(of.out()).get("fit").get("kits");
        assertEquals(0.25, Double.parseDouble(chances.get(0).get("chance").asString()), 1e-9);
        assertEquals(0.5, Double.parseDouble(chances.get(1).get("chance").asString()), 1e-9);
        Run excluded = Run.of(
                "litter-fit",
                "--pedigree",
                Files.writeString(
                                folder.resolve("wrong.csv"),
                                Files.readString(Path.of(tested)).replace("hob,male,,,,C/c", "hob,male,,,,C/C"))
                        .toString());
        assertEquals(ExitCodes.ANSWERED, excluded.code(), excluded.err());
        assertTrue(excluded.out().startsWith("Under this model Pip of litter A cannot be"), excluded.out());
    }

    /** A row for each litter and model; 11 dark and 3 pink of carriers are as likely under both. */
    @Test
    void figures_as_a_table() throws IOException {
        String file = fitting();
        Run which = Run.of(
                "which-model",
                "--pedigree",
                file,
                "--traits",
                "eye colour",
                "--rival",
                "geneticsrules.ferret.silver-recessive",
                "--format",
                "csv");
        assertEquals(ExitCodes.UNDECIDED, which.code(), which.err());
        List<String> rows = which.out().lines().toList();
        assertEquals(
                "litter,model,log likelihood,log ratio,standing,p,standard error,counts,not tested because",
                rows.get(0));
        assertEquals(5, rows.size());
        assertTrue(rows.get(1).startsWith("first,Ferret coats by common practice,-"), rows.get(1));
        assertTrue(rows.get(1).endsWith(",5 eye colour: dark | 2 eye colour: pink,"), rows.get(1));
        assertTrue(rows.get(2).startsWith("first,Silver as a recessive,-"), rows.get(2));
        assertTrue(rows.get(2).endsWith(",0,,,,,"), rows.get(2));
        Run fit = Run.of("litter-fit", "--pedigree", file, "--traits", "eye colour", "--format", "csv");
        assertEquals(3, fit.out().lines().count());
        assertTrue(fit.out().contains("second,Ferret coats by common practice,,,fine,"), fit.out());
        Run other = Run.of("may-carry", "--pedigree", file, "--animal", "hob", "--format", "csv");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, other.code());
    }

    /** By Bayes' rule: a tenth as much believed in before, and so many times less likely. */
    @Test
    void what_is_believed_beforehand_moves_beliefs_and_no_ratio() throws IOException {
        String pale = "geneticsrules.ferret.pale-apart";
        String litters = Path.of("guide", "jobs", "litters.csv").toString();
        List<String> asked = List.of(
                "which-model",
                "--pedigree",
                litters,
                "--population",
                "few carriers",
                "--rival",
                pale,
                "--format",
                "json");
        JsonNode alike = models(asked, List.of());
        JsonNode doubted = models(asked, List.of("--belief", pale + "=1/10"));
        assertEquals(alike.get(1).get("logLikelihood"), doubted.get(1).get("logLikelihood"));
        double odds = 0.1 * Math.exp(number(alike.get(1), "logLikelihood") - number(alike.get(0), "logLikelihood"));
        assertEquals(1.0 / 11, number(doubted.get(1), "prior"), 1e-9);
        assertEquals(odds / (1 + odds), number(doubted.get(1), "posterior"), 1e-12);
        JsonNode fitted = models(asked, List.of("--fitted", pale + "=2"));
        assertEquals(alike.get(1).get("logLikelihood"), fitted.get(1).get("logLikelihood"));
        assertEquals(4 - 2 * number(fitted.get(1), "logLikelihood"), number(fitted.get(1), "aic"), 1e-6);
        assertEquals(-2 * number(fitted.get(0), "logLikelihood"), number(fitted.get(0), "aic"), 1e-6);
        assertFalse(alike.get(1).has("aic"));
        Run uncounted = Run.of(
                "which-model", "--pedigree", litters, "--rival", pale, "--fitted", pale + "=two", "--belief", "x");
        assertTrue(uncounted.err().contains("\"two\" is no whole number"), uncounted.err());
        assertTrue(uncounted.err().contains("no \"=\" parts a model from its share"), uncounted.err());
        Run wrong = Run.of(
                "which-model",
                "--pedigree",
                litters,
                "--rival",
                pale,
                "--belief",
                "x",
                "--belief",
                pale + "=3",
                "--belief",
                pale + "=1/2",
                "--belief",
                pale + "=1/3");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        assertTrue(wrong.err().contains("no \"=\" parts a model from its share"), wrong.err());
        assertTrue(wrong.err().contains("a probability lies between 0 and 1, but was 3/1"), wrong.err());
        assertTrue(wrong.err().contains("a second share"), wrong.err());
        Run unknown = Run.of(
                "which-model", "--pedigree", litters, "--rival", pale, "--belief", "geneticsrules.ferret.pale-apat=1");
        assertTrue(unknown.err().contains("did you mean \"" + pale + "\""), unknown.err());
        Run none = Run.of(
                "which-model",
                "--pedigree",
                litters,
                "--rival",
                pale,
                "--belief",
                pale + "=0",
                "--belief",
                "geneticsrules.ferret.common-practice=0");
        assertTrue(none.err().contains("no model is believed in"), none.err());
    }

    private static JsonNode models(List<String> asked, List<String> more) {
        List<String> all = new ArrayList<>(asked);
        all.addAll(more);
        Run run = Run.of(all.toArray(String[]::new));
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        return JsonMapper.shared().readTree(run.out()).get("comparison").get("models");
    }

    private static double number(JsonNode of, String name) {
        return Double.parseDouble(of.get(name).asString());
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
                "--planned \"hob\": expected two animals",
                "did you mean \"jill\"?",
                "--kits: 99",
                "--sure 100 %")) {
            assertTrue(run.err().contains(problem), problem + " in " + run.err());
        }
        Run none = Run.of("tell-apart", "--pedigree", fitting());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, none.code(), none.out());
        assertTrue(none.err().contains("--rival"), none.err());
    }

    @Test
    void what_is_no_number_no_file_or_no_model_is_told_in_plain_words() throws IOException {
        String[][] asked = {
            {"--seed", "abc", "'abc' is no whole number that can be used here"},
            {"--rival", "geneticsrules.ferret.pale-appart", "did you mean \"geneticsrules.ferret.pale-apart\"?"},
            {"--rival", "nosuch", "expected an id that \"genetics models\" lists, or a file"},
            {"--pedigree", "..", ".. cannot be read: it is a folder"}
        };
        for (String[] one : asked) {
            List<String> line = new ArrayList<>(List.of("which-model", one[0], one[1]));
            if (!one[0].equals("--pedigree")) {
                line.addAll(List.of("--pedigree", fitting()));
            }
            Run run = Run.of(line.toArray(String[]::new));
            assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
            assertTrue(run.err().contains(one[2]), run.err());
        }
        Run belief = Run.of(
                "which-model",
                "--pedigree",
                fitting(),
                "--rival",
                "geneticsrules.ferret.pale-apart",
                "--belief",
                "pale=1/10");
        assertTrue(belief.err().contains("did you mean \"geneticsrules.ferret.pale-apart\"?"), belief.err());
    }

    @Test
    void a_rival_that_is_named_twice_is_told_so() throws IOException {
        String rival = "geneticsrules.ferret.pale-apart";
        for (String command : List.of("which-model", "tell-apart")) {
            Run run = Run.of(command, "--pedigree", fitting(), "--rival", rival, "--rival", rival);
            assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
            assertEquals("problem: --rival " + rival + ": named twice; expected each rival once\n", run.err());
        }
    }
}
