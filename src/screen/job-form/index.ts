/** All that writing a job wants, in one place that is loaded when it is wanted and not when the program starts. */
export { fileText } from '../../job/draft/file-text.ts';
export { answeredForm, backInForm, draftIn, formOf, newForm, shopOf } from './job-form.ts';
export { formView } from './view.ts';
