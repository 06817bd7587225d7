package org.geneticsrules.spi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Node;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.spi.Fakes.Seals;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** The versions of today in a question of yesterday. */
class RenewalTest {

    private static final Model OLD = Coats.recessive();
    private static final Model NEW = Documents.reader()
            .readModel(
                    Source.of(
                            "new",
                            Documents.write(OLD)
                                    .replace("\"version\": \"1\",\n  \"cat", "\"version\": \"2\",\n  \"cat")),
                    List.of(Coats.TRAITS));

    private static Patch patch(String version, Model base) {
        return new Patch(
                "rarer",
                version,
                Optional.empty(),
                base.reference(),
                ImmutableMap.of(),
                ImmutableMap.of("/traits/coat/otherwise", Node.text("dark")),
                List.of(),
                ImmutableMap.of());
    }

    private static CautionSet cautions(String id, String version) {
        return new CautionSet(id, version, Optional.empty(), Optional.of(Coats.TRAITS.reference()), ImmutableMap.of());
    }

    private static Vocabulary names(String version) {
        return Vocabulary.builder("names", version, Coats.TRAITS).build();
    }

    private static HeldModel patched(Patch patch, Model base) {
        return HeldModel.of(base, List.of(patch), Documents.reader().apply(base, List.of(patch)));
    }

    private static Analysis analysis() {
        Analysis plain = Analysis.of(
                Analysis.Kind.NAMED,
                HeldModel.of(OLD),
                Coats.ofCarriers(3, 1),
                patched(patch("1", OLD), OLD).called("mine"),
                HeldModel.of(Coats.lethal()));
        return new Analysis(
                plain.kind(),
                plain.model(),
                plain.rivals(),
                List.of(cautions("theirs", "1"), cautions("own", "1")),
                plain.pedigree(),
                List.of(names("1")),
                plain.settings());
    }

    private static Registry registry(String... more) {
        Map<String, String> texts = new TreeMap<>(Map.of("a", Documents.write(Coats.TRAITS)));
        List<String> all = new ArrayList<>(List.of(
                Documents.write(NEW),
                Documents.write(patch("2", NEW)),
                Documents.write(cautions("theirs", "2")),
                Documents.write(cautions("further", "1")),
                Documents.write(names("2"))));
        all.addAll(List.of(more));
        for (int i = 0; i < all.size(); i++) {
            texts.put("b" + i, all.get(i));
        }
        Registry registry = Registry.of(List.of(new Seals(texts)));
        assertEquals(List.of(), registry.problems());
        return registry;
    }

    private static List<String> references(Analysis analysis) {
        return analysis.documents().keySet().stream()
                .map(one -> one.id() + " " + one.version())
                .toList();
    }

    @Test
    void everything_at_hand_takes_its_place_and_the_rest_stays() {
        Analysis renewed = Renewal.of(registry()).renew(analysis());
        assertEquals(
                List.of(
                        "coats 1",
                        "recessive 2",
                        "lethal 1",
                        "rarer 2",
                        "theirs 2",
                        "further 1",
                        "own 1",
                        "names 2",
                        "carriers 1"),
                references(renewed));
        assertEquals(NEW, renewed.rivals().get(0).base());
        assertEquals("mine", renewed.rivals().get(0).title());
        assertEquals(analysis().settings(), renewed.settings());
        assertEquals(
                List.of("recessive", "rarer", "theirs", "names", "further"),
                DocumentChange.between(analysis(), renewed).stream()
                        .map(DocumentChange::id)
                        .toList());
    }

    @Test
    void where_nothing_is_stated_nothing_changes() {
        assertEquals(references(analysis()), references(Renewal.ofStated().renew(analysis())));
        assertEquals(
                List.of(), DocumentChange.between(analysis(), Renewal.ofStated().renew(analysis())));
    }

    @Test
    void what_is_stated_goes_before_what_plug_ins_have() {
        Renewal stated = Renewal.of(registry()).with(OLD).with(patch("3", OLD));
        Analysis renewed = stated.renew(analysis());
        assertEquals(OLD, renewed.model().model());
        assertEquals(
                "rarer 3",
                renewed.rivals().get(0).patches().get(0).reference().id() + " "
                        + renewed.rivals().get(0).patches().get(0).version());
    }

    @Test
    void a_patch_that_does_not_fit_the_model_of_today_is_refused() {
        ProblemsException thrown = assertThrows(
                ProblemsException.class, () -> Renewal.ofStated().with(NEW).renew(analysis()));
        assertEquals("other-base", thrown.problems().get(0).code());
    }

    @Test
    void what_was_not_asked_about_cannot_be_renewed() {
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> Renewal.ofStated()
                        .with(Coats.dominant())
                        .with(patch("3", Coats.twoLoci()))
                        .renew(analysis()));
        assertEquals(
                List.of("not-in-analysis"),
                thrown.problems().stream().map(one -> one.code()).toList());
    }

    @Test
    void of_several_versions_none_is_guessed() {
        Registry two = registry(Documents.write(OLD));
        ProblemsException thrown =
                assertThrows(ProblemsException.class, () -> Renewal.of(two).renew(analysis()));
        assertEquals("several-versions", thrown.problems().get(0).code());
    }
}
