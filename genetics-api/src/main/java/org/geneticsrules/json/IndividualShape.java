package org.geneticsrules.json;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Hearing;
import org.geneticsrules.pedigree.HearingTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.PartialDate;

/** The shape of what is recorded of one individual. */
final class IndividualShape {

    private IndividualShape() {}

    static Individual read(String id, Part part) {
        Part.Members members =
                part.members("sex", "born", "population", "observations", "names", "tests", "hearing", "fertility");
        return new Individual(
                id,
                members.optional("sex").flatMap(word -> word.word("sex", Sex::of, Sex.words())),
                members.optional("born").flatMap(PedigreeShape::date),
                members.optional("population").flatMap(PedigreeShape::id),
                records(members.optional("observations"), IndividualShape::observation),
                records(members.optional("names"), IndividualShape::name),
                records(members.optional("tests"), IndividualShape::test),
                records(members.optional("hearing"), IndividualShape::hearing),
                members.optional("fertility")
                        .flatMap(word -> word.word("fertility", Fertility::of, Fertility.words()))
                        .orElse(Fertility.UNKNOWN));
    }

    private static <T> List<T> records(Optional<Part> list, Function<Part, Optional<T>> form) {
        List<T> records = new ArrayList<>();
        list.ifPresent(part -> part.items().forEach(item -> form.apply(item).ifPresent(records::add)));
        return records;
    }

    private static Optional<Observation> observation(Part part) {
        Part.Members members = part.members("date", "stage", "light", "observer", "looks");
        Optional<LocalDate> date = members.optional("date").flatMap(PedigreeShape::date);
        LifeStage stage = members.optional("stage").map(IndividualShape::stage).orElse(LifeStage.unstated());
        Optional<String> light = members.optional("light").flatMap(IndividualShape::light);
        Optional<String> observer = members.optional("observer").flatMap(PedigreeShape::id);
        Optional<Set<Phenotype>> looks =
                members.required("looks").map(list -> Part.distinct(list.items(1), IndividualShape::look));
        return looks.filter(found -> !found.isEmpty()).flatMap(found -> {
            Set<String> traits = found.iterator().next().traits();
            boolean good = found.stream().allMatch(look -> look.traits().equals(traits));
            if (!good) {
                part.problems()
                        .add(
                                "looks-differ",
                                part.pointer() + "/looks",
                                "of several looks one was seen, so no two can speak of different traits",
                                "states of the same traits in each");
            }
            return good
                    ? Optional.of(new Observation(date, stage, found, light, observer, Optional.empty()))
                    : Optional.empty();
        });
    }

    private static Optional<CalledName> name(Part part) {
        Part.Members members = part.members("word", "vocabulary", "facet", "date", "stage", "light", "observer");
        Optional<String> word = members.required("word").flatMap(PedigreeShape::id);
        Optional<String> vocabulary = members.required("vocabulary").flatMap(PedigreeShape::id);
        Optional<String> facet = members.optional("facet").flatMap(stated -> plain("facet", stated));
        Optional<PartialDate> date = members.optional("date").flatMap(PedigreeShape::partialDate);
        LifeStage stage = members.optional("stage").map(IndividualShape::stage).orElse(LifeStage.unstated());
        Optional<String> light = members.optional("light").flatMap(IndividualShape::light);
        Optional<String> observer = members.optional("observer").flatMap(PedigreeShape::id);
        return word.flatMap(
                said -> vocabulary.map(whose -> new CalledName(said, whose, facet, date, stage, light, observer)));
    }

    static Optional<String> light(Part part) {
        return plain("light", part);
    }

    private static Optional<String> plain(String what, Part part) {
        Optional<String> word = part.text();
        word.ifPresent(text -> PlainWords.check(text, what, part.pointer(), part.problems()));
        return word.filter(PlainWords::are);
    }

    static LifeStage stage(Part part) {
        Part.Members members = part.members("weeks", "moult", "season");
        Optional<String> season = members.optional("season").flatMap(Part::text).filter(name -> {
            boolean good = LifeStage.isSeasonName(name);
            if (!good) {
                part.problems()
                        .add(
                                "bad-season",
                                part.pointer() + "/season",
                                "\"" + name + "\" cannot name a season",
                                "1 to 80 letters, spaces and hyphens, beginning and ending with a letter");
            }
            return good;
        });
        return new LifeStage(count(members.optional("weeks")), count(members.optional("moult")), season);
    }

    private static OptionalInt count(Optional<Part> part) {
        return part.flatMap(stated -> stated.amount(LifeStage.MOST))
                .map(OptionalInt::of)
                .orElseGet(OptionalInt::empty);
    }

    static Optional<Phenotype> look(Part part) {
        Map<String, String> states = new LinkedHashMap<>();
        Map<String, Part> entries = part.entries();
        entries.forEach((trait, stated) -> {
            PlainWords.check(trait, "trait", stated.pointer(), stated.problems());
            stated.text().ifPresent(state -> {
                PlainWords.check(state, "state", stated.pointer(), stated.problems());
                if (PlainWords.are(trait) && PlainWords.are(state)) {
                    states.put(trait, state);
                }
            });
        });
        if (entries.isEmpty() && part.isObject()) {
            part.problems().add("empty-look", part.pointer(), "the look says nothing", "a state of at least one trait");
        }
        return states.isEmpty() ? Optional.empty() : Optional.of(Phenotype.from(states));
    }

    private static Optional<GenotypeTest> test(Part part) {
        Part.Members members = part.members("date", "locus", "result", "error");
        Optional<LocalDate> date = members.optional("date").flatMap(PedigreeShape::date);
        Optional<String> locus = members.required("locus").flatMap(PedigreeShape::id);
        Optional<Set<String>> result =
                members.required("result").map(list -> Part.distinct(list.items(1), IndividualShape::result));
        Optional<Probability> error = members.optional("error")
                .flatMap(chance -> ChanceShape.read(chance, "bad-chance").filter(value -> {
                    if (value.isOne()) {
                        chance.problems()
                                .add(
                                        "certain-error",
                                        chance.pointer(),
                                        "a test that is always wrong tells nothing",
                                        "0 to less than 1");
                    }
                    return !value.isOne();
                }));
        return locus.flatMap(at -> result.filter(texts -> !texts.isEmpty())
                .map(texts -> new GenotypeTest(date, at, texts, error.orElse(Probability.ZERO))));
    }

    private static Optional<String> result(Part part) {
        return part.text().filter(text -> {
            boolean good = GenotypeTest.isResult(text);
            if (!good) {
                part.problems()
                        .add(
                                "bad-result",
                                part.pointer(),
                                "\"" + text + "\" is no genotype of one locus",
                                "genotype text without spaces and semicolons, such as C/c");
            }
            return good;
        });
    }

    private static Optional<HearingTest> hearing(Part part) {
        Part.Members members = part.members("date", "left", "right");
        Optional<LocalDate> date = members.optional("date").flatMap(PedigreeShape::date);
        Optional<Hearing> left = members.required("left").flatMap(IndividualShape::ear);
        Optional<Hearing> right = members.required("right").flatMap(IndividualShape::ear);
        return left.flatMap(one -> right.map(other -> new HearingTest(date, one, other)));
    }

    private static Optional<Hearing> ear(Part part) {
        return part.word("hearing", Hearing::of, Hearing.words());
    }
}
