package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.PlainNames.Day;
import org.geneticsrules.vocabulary.PlainNames.From;
import org.geneticsrules.vocabulary.PlainNames.Reading;
import org.geneticsrules.vocabulary.PlainNames.Word;

/** Small random vocabularies, and random animals to be named by them. */
final class RandomNames {

    private static final int FIRST_YEAR = 2000;
    private static final int YEARS = 2;

    private final Random random;

    RandomNames(long seed) {
        this.random = new Random(seed);
    }

    PlainNames vocabulary() {
        Map<String, List<String>> states = new LinkedHashMap<>();
        Map<String, From> judgeable = new LinkedHashMap<>();
        int traits = 2 + random.nextInt(3);
        for (int t = 0; t < traits; t++) {
            List<String> values = new ArrayList<>();
            int count = 2 + random.nextInt(2);
            for (int s = 0; s < count; s++) {
                values.add("t" + t + " s" + s);
            }
            states.put("t" + t, values);
            from(3).ifPresent(stage -> judgeable.put("t" + (states.size() - 1), stage));
        }
        List<String> seasons = random.nextInt(3) == 0 ? List.of() : List.of("summer", "winter");
        PlainNames bare = new PlainNames(states, judgeable, seasons, List.of("colour", "marks"), List.of());
        return withNames(bare, "");
    }

    /** Other names for the same traits. */
    PlainNames withNames(PlainNames traits, String prefix) {
        List<Map<String, String>> points = traits.points();
        List<Word> names = new ArrayList<>();
        int count = 2 + random.nextInt(4);
        for (int n = 0; n < count; n++) {
            List<Reading> senses = new ArrayList<>();
            int senseCount = 1 + random.nextInt(5) / 3;
            for (int s = 0; s < senseCount; s++) {
                senses.add(sense(traits, points, "sense " + s));
            }
            if (random.nextInt(4) == 0) {
                takenOver(senses);
            }
            names.add(new Word(prefix + "name " + n, random.nextInt(3) == 0 ? "marks" : "colour", senses));
        }
        return new PlainNames(traits.states(), traits.judgeable(), traits.seasons(), traits.facets(), names);
    }

    /** Lets the first sense end with some month, and another of the same looks begin with the next one. */
    private void takenOver(List<Reading> senses) {
        Reading before = senses.get(0);
        int year = FIRST_YEAR + random.nextInt(YEARS);
        int month = 1 + random.nextInt(11);
        senses.set(
                0,
                new Reading(
                        before.id(),
                        before.looks(),
                        Optional.empty(),
                        Optional.of(new Day(year, month, 0)),
                        before.from()));
        senses.add(new Reading(
                "taken over",
                before.looks(),
                Optional.of(new Day(year, month + 1, 0)),
                Optional.empty(),
                before.from()));
    }

    private Reading sense(PlainNames traits, List<Map<String, String>> points, String id) {
        while (true) {
            List<Map<String, Set<String>>> looks = new ArrayList<>();
            int count = 1 + random.nextInt(3);
            for (int l = 0; l < count; l++) {
                looks.add(look(traits));
            }
            Optional<Day> first = sometimes();
            Optional<Day> last = sometimes();
            boolean backwards = first.isPresent()
                    && last.isPresent()
                    && first.get().number() > last.get().lastNumber();
            Reading sense = new Reading(id, looks, backwards ? last : first, backwards ? first : last, from(4));
            if (!points.stream().allMatch(point -> NamesTwin.isIn(sense, point))) {
                return sense;
            }
        }
    }

    private Map<String, Set<String>> look(PlainNames traits) {
        List<String> variables = new ArrayList<>(traits.states().keySet());
        // sex and season are asked for now and then
        traits.variables().keySet().stream()
                .filter(variable -> !traits.states().containsKey(variable) && random.nextInt(3) == 0)
                .forEach(variables::add);
        Collections.shuffle(variables, random);
        Map<String, Set<String>> look = new LinkedHashMap<>();
        int count = 1 + random.nextInt(Math.min(3, variables.size()));
        for (String variable : variables.subList(0, count)) {
            List<String> values = new ArrayList<>(traits.variables().get(variable));
            Collections.shuffle(values, random);
            look.put(
                    variable,
                    new LinkedHashSet<>(values.subList(0, 1 + random.nextInt(Math.max(1, values.size() - 1)))));
        }
        return look;
    }

    private Optional<Day> sometimes() {
        return random.nextInt(3) == 0 ? Optional.of(day()) : Optional.empty();
    }

    /** A day, a month or a year. */
    private Day day() {
        int year = FIRST_YEAR + random.nextInt(YEARS);
        int month = random.nextBoolean() ? 0 : 1 + random.nextInt(12);
        return new Day(year, month, month == 0 || random.nextBoolean() ? 0 : 1 + random.nextInt(28));
    }

    private Optional<From> from(int oneIn) {
        return random.nextInt(oneIn) == 0
                ? Optional.of(new From(random.nextBoolean(), 1 + random.nextInt(3)))
                : Optional.empty();
    }

    /** What may be known of an animal. */
    record Look(
            Map<String, String> seen,
            Optional<String> sex,
            Optional<String> season,
            OptionalInt weeks,
            OptionalInt moult,
            Optional<Day> date) {

        /** Sex and season, if known. */
        Map<String, String> circumstances() {
            Map<String, String> known = new LinkedHashMap<>();
            sex.ifPresent(value -> known.put("sex", value));
            season.ifPresent(value -> known.put("season", value));
            return known;
        }

        boolean isBefore(Optional<From> from) {
            OptionalInt count = from.isEmpty() || from.get().weeks() ? weeks : moult;
            return from.isPresent()
                    && count.isPresent()
                    && count.getAsInt() < from.get().count();
        }

        Occasion occasion() {
            Optional<Sex> known = sex.map(word -> Sex.valueOf(word.toUpperCase(Locale.ROOT)));
            return new Occasion(new LifeStage(weeks, moult, season), known, date.map(RandomNames::date));
        }
    }

    Look look(Map<String, List<String>> states, List<String> seasons) {
        Map<String, String> seen = new LinkedHashMap<>();
        states.forEach((trait, values) -> {
            if (random.nextInt(3) > 0) {
                seen.put(trait, values.get(random.nextInt(values.size())));
            }
        });
        return new Look(
                seen,
                random.nextBoolean() ? Optional.of(random.nextBoolean() ? "female" : "male") : Optional.empty(),
                seasons.isEmpty() || random.nextBoolean()
                        ? Optional.empty()
                        : Optional.of(seasons.get(random.nextInt(seasons.size()))),
                random.nextBoolean() ? OptionalInt.of(random.nextInt(5)) : OptionalInt.empty(),
                random.nextBoolean() ? OptionalInt.of(random.nextInt(5)) : OptionalInt.empty(),
                random.nextBoolean() ? Optional.of(day()) : Optional.empty());
    }

    static PartialDate date(Day day) {
        return new PartialDate(day.year(), number(day.month()), number(day.day()));
    }

    private static OptionalInt number(int stated) {
        return stated == 0 ? OptionalInt.empty() : OptionalInt.of(stated);
    }

    /** The library's own catalogue of the same traits. */
    static Catalogue catalogue(PlainNames plain) {
        Catalogue.Builder catalogue =
                Catalogue.builder("random.traits", "1").seasons(plain.seasons().toArray(new String[0]));
        plain.states().forEach((id, states) -> {
            Trait trait = Trait.of(id, states.toArray(new String[0]));
            From from = plain.judgeable().get(id);
            catalogue.trait(from == null ? trait : trait.judgeableFrom(stage(from)));
        });
        return catalogue.build();
    }

    private static LifeStage stage(From from) {
        return from.weeks() ? LifeStage.atWeek(from.count()) : LifeStage.atMoult(from.count());
    }

    /** The library's own vocabulary of the same names; every second condition says what is forbidden. */
    static Vocabulary vocabulary(PlainNames plain) {
        VocabularyBuilder builder = Vocabulary.builder("random.names", "1", catalogue(plain));
        plain.facets().forEach(facet -> builder.facet(Facet.of(facet)));
        for (Word word : plain.names()) {
            Name name = Name.of(word.word(), word.facet());
            for (Reading sense : word.senses()) {
                name = name.withSense(sense(plain, sense));
            }
            builder.name(name);
        }
        return builder.build();
    }

    private static Sense sense(PlainNames plain, Reading stated) {
        Sense sense = Sense.of(stated.id())
                .withPeriod(new Period(
                        stated.first().map(RandomNames::date), stated.last().map(RandomNames::date)));
        if (stated.from().isPresent()) {
            sense = sense.withJudgeableFrom(stage(stated.from().get()));
        }
        for (int l = 0; l < stated.looks().size(); l++) {
            Map<String, Allowed> allowed = new LinkedHashMap<>();
            for (Map.Entry<String, Set<String>> variable : stated.looks().get(l).entrySet()) {
                Set<String> others = new LinkedHashSet<>(plain.variables().get(variable.getKey()));
                others.removeAll(variable.getValue());
                boolean except = (l + variable.getKey().length()) % 2 == 0;
                allowed.put(variable.getKey(), new Allowed(except, except ? others : variable.getValue()));
            }
            sense = sense.withLook("look " + l, new Condition(allowed));
        }
        return sense;
    }
}
