package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.recorded.Parentage.OfKit;
import org.geneticsrules.answer.recorded.Parentage.OfMale;
import org.geneticsrules.answer.recorded.Parentage.Word;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Contradictions;
import org.geneticsrules.inference.RecordRef;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Paternity.Candidate;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/** Puts together which males may have sired a litter. */
final class ParentageAnswer {

    /** More ways in which kits can have sires are left to the engine. */
    private static final int MOST_WAYS = 256;

    private final Ground ground;
    private final Litter litter;
    private final List<Candidate> males;
    private final boolean perKit;
    private final Paternity asked;
    private final Pedigree kindred;
    private final Assigned assigned;
    private final Set<String> loci;
    private final Draft draft;

    ParentageAnswer(Ground ground, ParentageQuestion question) {
        this.ground = ground;
        this.draft = new Draft(ground);
        Litter recorded = ground.pedigree().litters().get(question.litter());
        if (recorded == null) {
            throw new IllegalArgumentException("no litter " + RecordWords.quoted(question.litter())
                    + " is recorded in the pedigree " + ground.pedigree());
        }
        this.litter = recorded;
        this.asked = question.males().orElse(recorded.sires());
        this.males = males(asked);
        this.perKit = asked instanceof Paternity.Candidates several && several.perKit();
        List<String> concerned = new ArrayList<>(litter.kits());
        litter.dam().ifPresent(concerned::add);
        males.forEach(male -> male.male().ifPresent(concerned::add));
        concerned.addAll(litter.sires().males());
        this.kindred = asMales(Kindreds.of(ground.pedigree()).around(concerned));
        // as the kindred has it: without a foster dam who is no relative
        this.assigned =
                new Assigned(kindred, Objects.requireNonNull(kindred.litters().get(litter.id())));
        this.loci = Altered.read(ground.compiled(), kindred);
    }

    private static List<Candidate> males(Paternity sires) {
        if (sires instanceof Paternity.Candidates several) {
            return several.candidates();
        }
        return sires instanceof Paternity.Known known
                ? ImmutableList.of(Candidate.of(known.sire(), Probability.ONE))
                : ImmutableList.of(new Candidate(Optional.empty(), Optional.empty(), Probability.ONE));
    }

    /** Whoever may be a sire is a male, also where it is supposed that another one is. */
    private Pedigree asMales(Pedigree related) {
        List<Individual> unsexed = males.stream()
                .flatMap(male -> male.male().stream())
                .map(related::individual)
                .filter(one -> one.sex().isEmpty())
                .map(one -> one.with(Sex.MALE))
                .toList();
        return unsexed.isEmpty()
                ? related
                : Altered.with(related, unsexed, List.of(), Set.of()).build();
    }

    RecordedAnswer answer() {
        Contradictions anyhow =
                ground.inference(assigned.whole(Paternity.unknown())).contradictions();
        List<Weighed<Map<String, List<Chance>>>> weighed =
                anyhow.all().isEmpty() ? ground.weigh(this::chances, draft.notices) : List.of();
        List<OfKit> kits = new ArrayList<>();
        List<Optional<String>> each =
                perKit ? litter.kits().stream().map(Optional::of).toList() : List.of(Optional.<String>empty());
        for (Optional<String> kit : each) {
            kits.add(new OfKit(kit, ofMales(kit, anyhow, weighed)));
        }
        List<Origin> origins = weighed.stream().map(Weighed::origin).toList();
        Parentage found = new Parentage(litter.id(), perKit, origins, kits);
        complete(anyhow, origins);
        return draft.answer(
                "parentage",
                "Who may have sired "
                        + (perKit ? "each " + ground.answers().young().one() + " of " : "") + "litter "
                        + RecordWords.quoted(litter.id()) + "?",
                verdict(found),
                found);
    }

    private List<OfMale> ofMales(
            Optional<String> kit, Contradictions anyhow, List<Weighed<Map<String, List<Chance>>>> weighed) {
        List<OfMale> all = new ArrayList<>();
        for (int m = 0; m < males.size(); m++) {
            Candidate male = males.get(m);
            int at = m;
            List<Chance> chances = weighed.stream()
                    .map(one -> one.found().getOrDefault(kit.orElse(""), List.of()))
                    .filter(list -> !list.isEmpty())
                    .map(list -> list.get(at))
                    .toList();
            // that nobody fits is an answer
            chances.stream()
                    .map(Chance::standing)
                    .filter(standing -> standing != Standing.CONTRADICTED)
                    .forEach(draft::settled);
            if (!anyhow.all().isEmpty()) {
                draft.undecided();
                all.add(new OfMale(male, Word.CONTRADICTED, List.of(), chances));
                continue;
            }
            Pedigree with =
                    kit.isPresent() ? assigned.alone(kit.get(), male, asked) : assigned.whole(Assigned.certain(male));
            Contradictions against = ground.inference(with).contradictions();
            Word word = !against.all().isEmpty()
                    ? Word.EXCLUDED
                    : against.undecided().isEmpty() ? Word.NOT_EXCLUDED : Word.UNDECIDED;
            if (word == Word.UNDECIDED) {
                draft.undecided();
            }
            RecordWords words = new RecordWords(with);
            List<List<Cited>> reasons = against.all().stream()
                    .map(one -> one.records().stream()
                            .filter(record -> !isSupposed(record))
                            .map(words::cited)
                            .toList())
                    .toList();
            all.add(new OfMale(male, word, reasons, chances));
        }
        return all;
    }

    /** That he is the sire is what is supposed here, and no record. */
    private boolean isSupposed(RecordRef record) {
        return record instanceof RecordRef.SiresOf sires && sires.litter().equals(litter.id());
    }

    /** By the empty text for the whole litter or by kit, how likely each male is to be the sire. */
    private Map<String, List<Chance>> chances(Origin origin) {
        Map<String, List<Chance>> found = new LinkedHashMap<>();
        if (!perKit) {
            double[] shares =
                    males.stream().mapToDouble(male -> male.share().toDouble()).toArray();
            List<Pedigree> supposed = males.stream()
                    .map(male -> assigned.whole(Assigned.certain(male)))
                    .toList();
            Optional<double[]> weights = weights(origin, supposed, shares);
            found.put("", chances(weights, males.size(), (way, male) -> way == male));
            return found;
        }
        int kits = litter.kits().size();
        // where pairs may have no kits that live, a male's share depends on what he is, which a way by itself does not
        // know
        boolean sharesVary = !ground.compiled().model().viability().isEmpty();
        if (sharesVary || Math.pow(males.size(), kits) > MOST_WAYS) {
            return byEngine(origin);
        }
        int ways = (int) Math.pow(males.size(), kits);
        List<Pedigree> supposed = new ArrayList<>();
        double[] shares = new double[ways];
        for (int way = 0; way < ways; way++) {
            Map<Paternity, List<String>> kitsOf = new LinkedHashMap<>();
            shares[way] = 1;
            for (int k = 0; k < kits; k++) {
                Candidate male = males.get(digit(way, k));
                shares[way] *= male.share().toDouble();
                kitsOf.computeIfAbsent(Assigned.certain(male), key -> new ArrayList<>())
                        .add(litter.kits().get(k));
            }
            supposed.add(assigned.with(kitsOf));
        }
        Optional<double[]> weights = weights(origin, supposed, shares);
        for (int k = 0; k < kits; k++) {
            int kit = k;
            found.put(litter.kits().get(k), chances(weights, ways, (way, male) -> digit(way, kit) == male));
        }
        return found;
    }

    /** Which male sires a kit in a way of giving each kit a sire. */
    private int digit(int way, int kit) {
        return way / (int) Math.pow(males.size(), kit) % males.size();
    }

    private interface Sires {
        boolean in(int way, int male);
    }

    private List<Chance> chances(Optional<double[]> weights, int ways, Sires sires) {
        List<Chance> all = new ArrayList<>();
        for (int male = 0; male < males.size(); male++) {
            double sum = 0;
            for (int way = 0; weights.isPresent() && way < ways; way++) {
                sum += sires.in(way, male) ? weights.get()[way] : 0;
            }
            boolean none = weights.isPresent() && Arrays.stream(weights.get()).sum() == 0;
            all.add(
                    weights.isEmpty()
                            ? Chance.unsettled(Standing.TOO_LARGE)
                            : none ? Chance.unsettled(Standing.CONTRADICTED) : Chance.exact(sum));
        }
        return all;
    }

    /** How likely each of several pedigrees is by the records, the shares given; empty if one was not settled. */
    private Optional<double[]> weights(Origin origin, List<Pedigree> supposed, double[] shares) {
        double[] logs = new double[shares.length];
        for (int way = 0; way < logs.length; way++) {
            Conclusions found = ground.inference(supposed.get(way), origin).conclude(loci);
            Standing worst = worst(found);
            if (worst == Standing.TOO_LARGE) {
                return Optional.empty();
            }
            logs[way] = worst == Standing.CONTRADICTED ? Double.NEGATIVE_INFINITY : found.logLikelihood();
        }
        double most = Arrays.stream(logs).max().orElse(0);
        double[] weights = new double[logs.length];
        double sum = 0;
        for (int way = 0; way < logs.length; way++) {
            weights[way] = most == Double.NEGATIVE_INFINITY ? 0 : shares[way] * Math.exp(logs[way] - most);
            sum += weights[way];
        }
        for (int way = 0; way < logs.length; way++) {
            weights[way] = sum == 0 ? 0 : weights[way] / sum;
        }
        return Optional.of(weights);
    }

    private Standing worst(Conclusions found) {
        Set<String> concerned = new LinkedHashSet<>(litter.kits());
        litter.dam().ifPresent(concerned::add);
        males.forEach(male -> male.male().ifPresent(concerned::add));
        Standing worst = Standing.EXACT;
        for (String id : concerned) {
            for (String locus : loci) {
                worst = PlannedMating.worse(worst, found.standing(id, locus));
            }
        }
        return worst;
    }

    private Map<String, List<Chance>> byEngine(Origin origin) {
        Conclusions found = ground.inference(assigned.whole(asked), origin).conclude(loci);
        Map<String, List<Chance>> each = new LinkedHashMap<>();
        for (String kit : litter.kits()) {
            Map<String, Double> sires = found.sires(kit);
            each.put(
                    kit,
                    males.stream()
                            .map(male -> sires.isEmpty()
                                    ? Chance.unsettled(
                                            worst(found) == Standing.EXACT ? Standing.TOO_LARGE : worst(found))
                                    : Chance.exact(
                                            sires.getOrDefault(male.male().orElse(""), 0.0)))
                            .toList());
        }
        return each;
    }

    private void complete(Contradictions anyhow, List<Origin> origins) {
        RecordWords words = new RecordWords(kindred);
        draft.given.add("litter " + RecordWords.quoted(litter.id())
                + litter.dam().map(dam -> ", dam " + RecordWords.quoted(dam)).orElse(", a dam who is not recorded"));
        males.forEach(male -> draft.given.add("possible sire: "
                + male.male().map(RecordWords::quoted).orElse("a male who is not recorded") + ", share "
                + male.share()));
        litter.kits().forEach(kit -> draft.given.addAll(words.facts(kit)));
        litter.dam().ifPresent(dam -> draft.given.addAll(words.facts(dam)));
        males.forEach(male -> male.male().ifPresent(id -> draft.given.addAll(words.facts(id))));
        draft.notices(kindred, ground.inference(kindred).notices());
        draft.rest(kindred, loci, origins);
        draft.taken.add(
                "no-parentage-test",
                "Looks are compared with what the model foretells; no DNA was.",
                "A DNA parentage test through a veterinarian settles what colour cannot: many males share a colour, a coat may be"
                        + " misnamed, and the model may be wrong.");
        String many = ground.answers().young().many();
        draft.taken.add(
                perKit ? "sire-per-kit" : "one-sire",
                perKit
                        ? "Each of the " + many + " was sired by one of these males, by itself."
                        : "One of these males sired the whole litter.",
                perKit
                        ? "If one of them sired the whole litter, what one of the " + many + " tells counts for all."
                        : "Litters of two sires occur; then ask for each of the " + many + " by itself.");
        if (males.size() > 1) {
            draft.taken.add(
                    "shares",
                    "Before anything was looked at, the males were as likely as their shares say.",
                    "Other shares give other chances; what excludes a male does not depend on them.");
        } else {
            draft.taken.add(
                    "one-male",
                    "Only one male is in question, so that a chance would say nothing.",
                    "Name every male who had access to the dam to compare them.");
        }
        if (!anyhow.all().isEmpty()) {
            draft.conflicts(assigned.whole(Paternity.unknown()), anyhow);
        }
        draft.raise(Situation.of("parentage"));
    }

    private String verdict(Parentage found) {
        String what = "litter " + RecordWords.quoted(litter.id());
        Collection<OfKit> kits = found.kits();
        if (kits.stream().flatMap(kit -> kit.males().stream()).anyMatch(one -> one.word() == Word.CONTRADICTED)) {
            return "Whoever sired " + what
                    + ", the records of it and its relatives cannot all be true under this model. Re-examine the records named,"
                    + " or the model.";
        }
        List<String> parts = new ArrayList<>();
        for (OfKit kit : kits) {
            List<String> each = new ArrayList<>();
            kit.males()
                    .forEach(one -> each.add(one.name() + " is " + one.word().word()
                            + (males.size() > 1 && one.word() == Word.NOT_EXCLUDED
                                    ? MayCarryAnswer.range(one.chances()).replaceFirst("^: ", ", with a chance of ")
                                    : "")));
            parts.add(kit.kit().map(RecordWords::quoted).orElse(what) + ": " + String.join("; ", each));
        }
        return "By colour and under this model alone, as a sire of " + String.join(". ", parts)
                + ". Colour proves no parentage.";
    }
}
