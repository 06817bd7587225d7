package org.geneticsrules.examples;

import java.io.PrintWriter;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Status;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.compared.PowerAnswer;
import org.geneticsrules.answer.compared.TellApartAnswer;
import org.geneticsrules.answer.described.DescribedAnswer;
import org.geneticsrules.answer.described.Description;
import org.geneticsrules.answer.estimated.EstimateAnswer;
import org.geneticsrules.answer.named.NamedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.json.DescribedDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.EstimateDocument;
import org.geneticsrules.json.LitterDocument;
import org.geneticsrules.json.NamedDocument;
import org.geneticsrules.json.PowerDocument;
import org.geneticsrules.json.RecordedDocument;
import org.geneticsrules.json.TellApartDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.render.AnswerText;
import org.geneticsrules.render.DescriptionText;
import org.geneticsrules.render.EstimateText;
import org.geneticsrules.render.LitterText;
import org.geneticsrules.render.NameText;
import org.geneticsrules.render.PowerText;
import org.geneticsrules.render.RecordedText;
import org.geneticsrules.render.TellApartText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.table.LitterTable;
import picocli.CommandLine.Option;

/** The options that say how an answer is printed. */
final class OutputChoice {

    private static final String CSV = "csv";

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            description = {
                "text for people (default), or json for programs: the answer's document and nothing else.",
                "Answers of litter-fit and which-model may also be a table, csv."
            })
    private String format = "text";

    @Option(names = "--words", description = "Name loci and alleles by words and not by letters.")
    private boolean words;

    boolean isJson() {
        return Inputs.choice("--format", format, "text", "json").equals("json");
    }

    /** Refuses a format that answers about litters have not. */
    void checkOfLitters() {
        Inputs.choice("--format", format, "text", "json", CSV);
    }

    TextStyle style(Model model) {
        return style(model, words);
    }

    /** The standard style, by letters or by words. */
    static TextStyle style(Model model, boolean words) {
        TextStyle named = TextStyle.standard().naming(model);
        return words ? named.withoutLetters() : named;
    }

    /** Prints an answer, with further text after it for people. */
    int print(Answer answer, Model model, String more, PrintWriter out) {
        if (isJson()) {
            out.print(Documents.write(AnswerDocument.of(answer)));
        } else {
            out.print(AnswerText.of(answer, style(model)));
            out.print(more);
        }
        return answer.status() == Status.UNDECIDED ? ExitCodes.UNDECIDED : ExitCodes.ANSWERED;
    }

    /** Prints an answer about recorded animals. */
    int print(RecordedAnswer answer, Model model, PrintWriter out) {
        out.print(isJson() ? Documents.write(RecordedDocument.of(answer)) : RecordedText.of(answer, style(model)));
        return answer.status() == Status.UNDECIDED ? ExitCodes.UNDECIDED : ExitCodes.ANSWERED;
    }

    /** Prints an answer about names. */
    int print(NamedAnswer answer, Model model, PrintWriter out) {
        out.print(isJson() ? Documents.write(NamedDocument.of(answer)) : NameText.of(answer, style(model)));
        return ExitCodes.ANSWERED;
    }

    /** Prints what litters say of models. That a model is rejected is an answer, too. */
    int print(LitterAnswer answer, Model model, PrintWriter out) {
        if (Inputs.choice("--format", format, "text", "json", CSV).equals(CSV)) {
            out.print(LitterTable.write(answer));
        } else {
            out.print(isJson() ? Documents.write(LitterDocument.of(answer)) : LitterText.of(answer, style(model)));
        }
        return answer.decided() ? ExitCodes.ANSWERED : ExitCodes.UNDECIDED;
    }

    /** Prints an estimate; where the records say nothing of the number, that is undecided. */
    int print(EstimateAnswer answer, PrintWriter out) {
        out.print(isJson() ? Documents.write(EstimateDocument.of(answer)) : EstimateText.of(answer));
        return answer.informative() ? ExitCodes.ANSWERED : ExitCodes.UNDECIDED;
    }

    /** Prints how often litters would tell models apart; where no mating can, that is undecided. */
    int print(PowerAnswer answer, Model model, PrintWriter out) {
        out.print(isJson() ? Documents.write(PowerDocument.of(answer)) : PowerText.of(answer, style(model)));
        return answer.decided() ? ExitCodes.ANSWERED : ExitCodes.UNDECIDED;
    }

    /** Prints what can be done next to tell models apart; where nothing that was tried does, that is undecided. */
    int print(TellApartAnswer answer, Model model, PrintWriter out) {
        out.print(isJson() ? Documents.write(TellApartDocument.of(answer)) : TellApartText.of(answer, style(model)));
        return answer.decided() ? ExitCodes.ANSWERED : ExitCodes.UNDECIDED;
    }

    /** Prints a description; where no one animal shows all that was seen, that is undecided. */
    int print(DescribedAnswer answer, Model model, PrintWriter out) {
        out.print(isJson() ? Documents.write(DescribedDocument.of(answer)) : DescriptionText.of(answer, style(model)));
        return answer.description().fit() == Description.Fit.NOT_ONE_ANIMAL ? ExitCodes.UNDECIDED : ExitCodes.ANSWERED;
    }
}
