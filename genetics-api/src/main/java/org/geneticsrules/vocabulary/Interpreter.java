package org.geneticsrules.vocabulary;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Meaning.Reading;

/** Finds out what a name says of an animal. Stateless and thread-safe. */
final class Interpreter {

    private static final int MOST_TOLD = 8;

    private Interpreter() {}

    /** The meaning of a word, as a name of one of some facets; of any, if none is given. */
    static Meaning meaning(Vocabulary vocabulary, Collection<String> facets, String word, Occasion occasion) {
        vocabulary.catalogue().check(occasion.stage());
        Problems problems = new Problems(Stage.REFERENCES);
        facets.stream()
                .filter(id -> !vocabulary.facets().containsKey(id))
                .forEach(id -> problems.unknown(
                        "unknown-facet",
                        "",
                        "facet of " + vocabulary,
                        id,
                        vocabulary.facets().keySet()));
        problems.throwIfAny();
        List<Reading> readings = readings(vocabulary, facets, word, occasion);
        List<Sense> senses = readings.stream().map(Reading::sense).toList();
        BoxSet circumstances = vocabulary.traitSpace().agreeing(TraitSpace.known(occasion));
        BoxSet whole = vocabulary.meaning(senses);
        BoxSet set = whole.and(circumstances);
        List<String> notices = new ArrayList<>();
        weak(vocabulary, word, readings, whole, occasion, notices);
        List<String> taken = new ArrayList<>();
        BoxSet told = told(vocabulary, word, senses, set, occasion, notices, taken);
        return new Meaning(vocabulary, word, occasion, readings, set, told, notices, taken);
    }

    /** Every sense in use on some day of the date; without a date, every sense that there has ever been. */
    private static List<Reading> readings(
            Vocabulary vocabulary, Collection<String> facets, String word, Occasion occasion) {
        List<Name> names = vocabulary.find(word).stream()
                .filter(name -> facets.isEmpty() || facets.contains(name.facet()))
                .toList();
        if (names.isEmpty()) {
            throw unknown(vocabulary, facets, word);
        }
        List<Reading> readings = new ArrayList<>();
        for (Name name : names) {
            for (Sense sense : name.senses().values()) {
                if (occasion.date().isEmpty() || sense.period().meets(occasion.date())) {
                    readings.add(new Reading(name, sense));
                }
            }
        }
        if (readings.isEmpty()) {
            String times = names.stream()
                    .flatMap(name -> name.senses().values().stream())
                    .map(sense -> sense.period().toString())
                    .distinct()
                    .collect(Collectors.joining(" or "));
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "not-in-use",
                            "",
                            "nobody said \"" + word + "\" "
                                    + occasion.date().orElseThrow().inWords())
                    .expecting("a date in " + times));
        }
        Set<String> spokenOf = readings.stream()
                .map(reading -> reading.name().facet())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (spokenOf.size() > 1) {
            throw new ProblemsException(
                    Problem.of(Stage.REFERENCES, "several-facets", "", "\"" + word + "\" is said of several things")
                            .expecting("one of the facets " + String.join(", ", spokenOf) + " to be named"));
        }
        return readings;
    }

    private static ProblemsException unknown(Vocabulary vocabulary, Collection<String> facets, String word) {
        List<String> words = vocabulary.names().values().stream()
                .filter(name -> facets.isEmpty() || facets.contains(name.facet()))
                .flatMap(name -> name.words().stream())
                .distinct()
                .toList();
        return new ProblemsException(Problems.unknown(
                Stage.REFERENCES,
                "unknown-name",
                "",
                "name" + (facets.isEmpty() ? "" : " of facet " + String.join(" or ", facets)) + " in " + vocabulary,
                word,
                words));
    }

    /** What is not known of the occasion although the meaning depends on it. */
    private static void weak(
            Vocabulary vocabulary,
            String word,
            List<Reading> readings,
            BoxSet whole,
            Occasion occasion,
            List<String> notices) {
        String said = "\"" + word + "\"";
        if (occasion.date().isEmpty()) {
            notices.add(said
                    + " was said without a date, so every sense that it ever had is allowed for; it is weak evidence");
        }
        PartOfDate.notice(occasion.date(), readings).ifPresent(notices::add);
        if (readings.size() > 1) {
            notices.add(said + " is ambiguous: it may mean any of "
                    + readings.stream()
                            .limit(MOST_TOLD)
                            .map(reading ->
                                    reading.name() + " (" + reading.sense().id() + ")")
                            .collect(Collectors.joining(", "))
                    + (readings.size() > MOST_TOLD ? ", and " + (readings.size() - MOST_TOLD) + " more" : ""));
        }
        Set<String> decisive = vocabulary.traitSpace().decisive(whole);
        if (occasion.stage().season().isEmpty() && decisive.contains(LifeStage.SEASON)) {
            notices.add("what " + said + " means depends on the season, which is not known; it is weak evidence");
        }
        if (occasion.sex().isEmpty() && decisive.contains(Sex.VARIABLE)) {
            notices.add("what " + said + " means depends on the sex, which is not known; it is weak evidence");
        }
    }

    /** What a record of the name says of traits alone: a sense that was said too early, and a trait that could not be told, say nothing. */
    private static BoxSet told(
            Vocabulary vocabulary,
            String word,
            List<Sense> senses,
            BoxSet set,
            Occasion occasion,
            List<String> notices,
            List<String> taken) {
        String said = "\"" + word + "\"";
        TraitSpace space = vocabulary.traitSpace();
        LifeStage stage = occasion.stage();
        Granted saying = new Granted("could be said");
        for (Sense sense : senses) {
            Judgeable judgeable = Judgeable.at(stage, sense.judgeableFrom());
            String from = sense.judgeableFrom().map(LifeStage::toString).orElse("");
            if (judgeable == Judgeable.NO) {
                notices.add(said + " cannot be said before " + from + ", so that it was said tells nothing");
                return space.boxes.everything();
            }
            if (judgeable == Judgeable.UNKNOWN) {
                String as = senses.size() == 1 ? said : said + " in the sense \"" + sense.id() + "\"";
                sense.judgeableFrom().ifPresent(stated -> saying.add(as, stated));
            }
        }
        saying.sentence().ifPresent(notices::add);
        if (set.isEmpty()) {
            notices.add(
                    "nobody is called " + said + " in this season or of this sex, so that it was said tells nothing");
            return space.boxes.everything();
        }
        Set<String> decisive = space.decisive(set);
        Set<String> left = new LinkedHashSet<>(Set.of(Sex.VARIABLE, LifeStage.SEASON));
        Granted telling = new Granted("could be told");
        vocabulary.catalogue().traits().values().stream()
                .filter(trait -> decisive.contains(trait.id()))
                .forEach(trait -> trait.judgeableFrom().ifPresent(from -> {
                    if (trait.judgeable(stage) == Judgeable.NO) {
                        notices.add("what " + said + " says of " + trait.id()
                                + " is left out: it cannot be told before " + from);
                        left.add(trait.id());
                    } else if (trait.judgeable(stage) == Judgeable.UNKNOWN) {
                        telling.add(trait.id(), from);
                    }
                }));
        telling.sentence().ifPresent(taken::add);
        return space.freed(set, left);
    }

    /** The points of a set, of which only some traits are looked at; all others must make no difference to it. */
    static List<Phenotype> phenotypes(BoxSet set, List<String> traits, String word, int most) {
        BigInteger others = BigInteger.ONE;
        for (String variable : set.space().names()) {
            if (!traits.contains(variable)) {
                others = others.multiply(
                        BigInteger.valueOf(set.space().values(variable).size()));
            }
        }
        BigInteger count = set.size().divide(others);
        if (count.compareTo(BigInteger.valueOf(most)) > 0) {
            throw new TooLargeException(
                    "looks that \"" + word + "\" covers",
                    count.doubleValue(),
                    most,
                    "state the date and season, or record what was seen instead of the name.");
        }
        List<Phenotype> looks = new ArrayList<>();
        list(set, traits, new LinkedHashMap<>(), looks);
        return looks;
    }

    private static void list(BoxSet set, List<String> traits, Map<String, String> chosen, List<Phenotype> into) {
        if (set.isEmpty()) {
            return;
        }
        if (chosen.size() == traits.size()) {
            into.add(Phenotype.from(chosen));
            return;
        }
        String trait = traits.get(chosen.size());
        for (String state : set.space().values(trait)) {
            chosen.put(trait, state);
            list(set.and(set.space().where(trait, Allowed.only(state))), traits, chosen, into);
            chosen.remove(trait);
        }
    }
}
